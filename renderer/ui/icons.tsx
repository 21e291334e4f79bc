/** The page's few signs, drawn on a 16-pixel grid in the text's colour. */
import type { ReactNode } from "react";

const PATHS = {
  ok: "M3 8.5 6.5 12 13 4.5",
  caution: "M8 2 14.5 13.5H1.5Z M8 6.5v3.2 M8 11.6v.2",
  fail: "M4 4 12 12 M12 4 4 12",
  play: "M5 3.5v9l7.5-4.5Z",
  pause: "M5.5 3.5v9 M10.5 3.5v9",
  back: "M11 3.5v9L5.5 8Z M4 3.5v9",
  on: "M5 3.5v9L10.500 8Z M12 3.5v9",
  loop: "M4 6.500a4.500 4.500 0 0 1 8 0 M12 2.800v3.800H8.200 M12 9.500a4.500 4.500 0 0 1-8 0 M4 13.200V9.400h3.800",
  undo: "M6 3 2.500 6.500 6 10 M2.500 6.500H10a3.500 3.500 0 0 1 0 7H7",
  redo: "M10 3l3.500 3.500L10 10 M13.500 6.500H6a3.500 3.500 0 0 0 0 7h3",
  pin: "M6 2h4 M6.500 2v5L4 9.500h8L9.500 7V2 M8 9.500V14",
  plus: "M8 3v10 M3 8h10",
  minus: "M3 8h10",
  more: "M6 3.500 10.500 8 6 12.500",
  down: "M3.500 6 8 10.500 12.500 6",
  help: "M5.500 6a2.500 2.500 0 1 1 3.700 2.200c-.8.5-1.200 1-1.200 1.900 M8 12.600v.2",
} as const;

export type IconName = keyof typeof PATHS;

export function Icon({ name, className = "" }: { name: IconName; className?: string }): ReactNode {
  return (
    <svg className={`icon ${className}`} viewBox="0 0 16 16" aria-hidden="true" focusable="false">
      <path d={PATHS[name]} />
    </svg>
  );
}
