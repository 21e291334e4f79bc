/** Draws coarsely while anything moves and finely once it stands, where drawing is dear. */
import type { Quality } from "../look/quality.ts";

/** What of the canvas is set and asked for. */
export interface Canvas {
  readonly density: () => number;
  readonly setDensity: (density: number) => void;
  readonly draw: () => void;
}

export interface Pace {
  /** Something moved: draw, and draw again finely when nothing has for a while. */
  readonly touch: () => void;
  readonly stop: () => void;
}

/** ms without motion after which the picture counts as standing. */
export const SETTLED = 250;

export function createPace(quality: Quality, canvas: Canvas): Pace {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const show = (density: number) => {
    if (canvas.density() !== density) canvas.setDensity(density);
    canvas.draw();
  };
  return {
    touch() {
      if (quality.moving === quality.still) return canvas.draw();
      clearTimeout(timer);
      timer = setTimeout(() => show(quality.still), SETTLED);
      show(quality.moving);
    },
    stop: () => clearTimeout(timer),
  };
}
