/** Where a line may break: at a space, but not between a figure and its unit. */

/** A figure at the end of a piece: "8.4", "(9.93", "7/8", "22". */
const FIGURE = /\d$/;
/** A unit, or a fraction that belongs to whole inches, with what closes the phrase behind it: "mm", "kΩ,", "°F)", "lb/ft³", "7/8". */
const UNIT = /^(?:[A-Za-zµΩ°%][A-Za-z0-9µΩ°²³·]{0,4}(?:\/[A-Za-z0-9²³]{1,5})?|\d+\/\d+)[),.;:]*$/u;

/** The pieces of a text that stay whole, in their order; joined by spaces they are the text. */
export function lineWords(text: string): string[] {
  const pieces: string[] = [];
  for (const word of text.split(" ")) {
    const last = pieces[pieces.length - 1];
    if (last !== undefined && FIGURE.test(last) && UNIT.test(word))
      pieces[pieces.length - 1] = `${last} ${word}`;
    else pieces.push(word);
  }
  return pieces;
}
