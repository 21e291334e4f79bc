/**
 * A sheet's SVG with its words as outlines: for a picture of dots. A browser that draws an SVG as a picture loads its faces too late
 * or not at all; outlines need none.
 */
import fontkit from "@pdf-lib/fontkit";
import { faceBytes } from "./fonts.ts";
import { printable } from "./pdf-type.ts";
import { number } from "./svg.ts";

type Font = ReturnType<typeof fontkit.create>;

const WEIGHTS = { words: "Figtree", greek: "Manrope" } as const;

/** The faces, opened once for a sheet. */
class Outlines {
  private readonly fonts = new Map<string, Font>();
  /** Code points there are, for `printable`. */
  readonly known: ReadonlySet<number>;

  constructor() {
    this.known = new Set(this.font("words", false).characterSet);
  }

  /** One line: its letters from the start of the baseline, millimetres at a type size, and how wide it is. */
  line(words: string, size: number, strong: boolean): { readonly paths: string; readonly width: number } {
    let along = 0;
    let paths = "";
    for (const letter of printable(words, this)) {
      const font = this.font(/[\u0370-\u03ff]/.test(letter) ? "greek" : "words", strong);
      const glyph = font.glyphForCodePoint(letter.codePointAt(0) ?? 0);
      const scale = size / font.unitsPerEm;
      const outline = glyph.path.toSVG();
      if (outline !== "") {
        const [x, s] = [number(along), Number(scale.toPrecision(9))];
        paths += `<path d="${outline}" transform="translate(${x} 0) scale(${s} ${-s})"/>`;
      }
      along += glyph.advanceWidth * scale;
    }
    return { paths, width: along };
  }

  private font(face: keyof typeof WEIGHTS, strong: boolean): Font {
    const key = `${face} ${strong}`;
    const font = this.fonts.get(key) ?? fontkit.create(faceBytes(WEIGHTS[face], strong ? 600 : 400));
    this.fonts.set(key, font);
    return font;
  }
}

const ENTITIES: Readonly<Record<string, string>> = { "&amp;": "&", "&lt;": "<", "&gt;": ">", "&quot;": '"' };

/** An SVG of `leafSvg`. Letters of one width stay letters: every machine has such a face of its own. */
export function outlined(svg: string): string {
  const outlines = new Outlines();
  return svg.replace(/<text ([^>]*)>([^<]*)<\/text>/g, (whole, head: string, inner: string) => {
    const marks = Object.fromEntries(
      [...head.matchAll(/([\w-]+)="([^"]*)"/g)].map(([, name, value]) => [name, value]),
    );
    if (marks["font-family"] !== undefined) return whole;
    const words = inner.replace(/&\w+;/g, (entity) => ENTITIES[entity] ?? entity);
    const { paths, width } = outlines.line(words, Number(marks["font-size"]), marks["font-weight"] === "600");
    const back = marks["text-anchor"] === "middle" ? width / 2 : marks["text-anchor"] === "end" ? width : 0;
    // Turned about the anchor first, then set back along the line.
    const turn = marks.transform === undefined ? "" : `${marks.transform} `;
    const place = `translate(${number(Number(marks.x) - back)} ${marks.y})`;
    return `<g fill="${marks.fill}" stroke="none" transform="${turn}${place}">${paths}</g>`;
  });
}
