/**
 * How wide a line of the sheet's face is, without the face at hand: advance widths of Figtree Regular and SemiBold (OFL; from
 * their hmtx tables, in thousandths of the type size, kerning left out). tests/core/sheet/text-width.test.ts reads the
 * fonts and compares.
 */
const REGULAR = [
  247, 298, 320, 629, 563, 786, 644, 200, 352, 352, 481, 623, 226, 417, 208, 389, 641, 413, 559, 544, 621,
  575, 566, 537, 614, 566, 253, 259, 623, 623, 623, 504, 989, 677, 611, 721, 688, 592, 543, 760, 751, 271,
  515, 610, 520, 846, 774, 776, 579, 780, 626, 614, 552, 707, 693, 960, 614, 604, 641, 324, 389, 324, 551,
  438, 221, 510, 586, 541, 586, 546, 369, 587, 558, 232, 269, 485, 220, 851, 558, 580, 591, 578, 338, 466,
  378, 558, 520, 784, 475, 526, 491, 385, 257, 385, 567,
];
const STRONG = [
  241, 307, 376, 630, 558, 802, 646, 227, 370, 370, 485, 629, 245, 411, 232, 415, 645, 419, 571, 551, 628,
  578, 574, 548, 613, 574, 282, 287, 629, 629, 629, 509, 991, 699, 612, 723, 695, 590, 550, 750, 750, 282,
  537, 644, 530, 853, 774, 783, 594, 785, 637, 610, 572, 705, 711, 975, 653, 630, 635, 336, 415, 336, 569,
  436, 247, 524, 592, 544, 591, 551, 384, 596, 565, 250, 282, 517, 236, 864, 564, 581, 597, 586, 363, 466,
  393, 564, 542, 815, 512, 556, 483, 391, 257, 391, 628,
];
const FIRST = 32;
/** Anything else: no letter of the sheets is wider. */
const OTHER = 860;

/** Width of a line of text, in the unit of `size`. */
export function textWidth(words: string, size: number, strong = false): number {
  const widths = strong ? STRONG : REGULAR;
  let sum = 0;
  for (const letter of words) sum += widths[letter.charCodeAt(0) - FIRST] ?? OTHER;
  return (sum * size) / 1000;
}
