/** The page's colours, as the theme's tokens have them at this moment. */
import type { Theme } from "../../state/view.ts";

export interface Palette {
  readonly theme: Theme;
  readonly ground: string;
  readonly label: string;
  readonly ink: string;
  readonly inkSoft: string;
  readonly line: string;
  readonly open: string;
  readonly caught: string;
  readonly riding: string;
  readonly shutOut: string;
  readonly flap: string;
  readonly magnet: string;
  readonly metal: string;
  readonly animal: string;
  readonly ghost: string;
  readonly act: string;
  readonly face: string;
}

const TOKENS = {
  ground: "--well",
  label: "--bench",
  ink: "--ink",
  inkSoft: "--ink-soft",
  line: "--line-strong",
  open: "--open",
  caught: "--caught",
  riding: "--riding",
  shutOut: "--shut-out",
  flap: "--flap",
  magnet: "--magnet",
  metal: "--metal",
  animal: "--animal",
  ghost: "--ghost",
  act: "--act",
  face: "--face",
} as const;

type Token = keyof typeof TOKENS;

/** What stands in for a token that the page does not define: a mid grey is seen and hurts nobody. */
const MISSING = "#808080";

export function readPalette(theme: Theme, read: (name: string) => string): Palette {
  const entries = (Object.keys(TOKENS) as Token[]).map((key) => {
    const text = read(TOKENS[key]).trim();
    return [key, text === "" ? (key === "face" ? "sans-serif" : MISSING) : text] as const;
  });
  return { theme, ...(Object.fromEntries(entries) as Record<Token, string>) };
}

/** The tokens on the page's root element. */
export function pagePalette(theme: Theme): Palette {
  const style = getComputedStyle(document.documentElement);
  return readPalette(theme, (name) => style.getPropertyValue(name));
}

export function samePalette(a: Palette, b: Palette): boolean {
  return (Object.keys(a) as (keyof Palette)[]).every((key) => a[key] === b[key]);
}
