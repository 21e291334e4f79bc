/** A pen on a canvas of any pixel density. */

import type { Colours, Fill, Ink } from "./figure.ts";
import { FILL_STROKES, FILL_TILE, GROUND_OPACITY, type Pen, type PenLook, STROKE_OPACITY } from "./pen.ts";

/** The context must already be scaled so that one unit is one CSS pixel; `density` is how many pixels that is. */
export function canvasPen(
  context: CanvasRenderingContext2D,
  { colours, face }: PenLook,
  density: number,
): Pen {
  return {
    rect(x, y, width, height, ink, opacity) {
      context.globalAlpha = opacity;
      context.fillStyle = colours[ink];
      context.fillRect(x, y, width, height);
      context.globalAlpha = 1;
    },
    line(points, { ink, width, dash }) {
      trace(context, points);
      context.strokeStyle = colours[ink];
      context.lineWidth = width;
      context.lineJoin = "round";
      context.setLineDash([...dash]);
      context.stroke();
      context.setLineDash([]);
    },
    area(points, ink, fill) {
      trace(context, points);
      context.closePath();
      context.fillStyle = fillPattern(context, colours, ink, fill, density);
      context.fill();
    },
    dot(x, y, radius, ink, shape) {
      context.beginPath();
      if (shape === "round") context.arc(x, y, radius, 0, 2 * Math.PI);
      else context.rect(x - radius, y - radius, 2 * radius, 2 * radius);
      context.fillStyle = colours.well;
      context.strokeStyle = colours[ink];
      context.lineWidth = 2;
      context.fill();
      context.stroke();
    },
    text(x, y, text, { ink, size, weight, anchor, upright }) {
      context.save();
      context.translate(x, y);
      if (upright) context.rotate(-Math.PI / 2);
      context.font = `${weight} ${size}px ${face}`;
      context.textAlign = anchor === "middle" ? "center" : anchor;
      context.fillStyle = colours[ink];
      context.fillText(text, 0, 0);
      context.restore();
    },
    clip(x, y, width, height) {
      context.save();
      context.beginPath();
      context.rect(x, y, width, height);
      context.clip();
    },
    unclip: () => context.restore(),
  };
}

function trace(context: CanvasRenderingContext2D, points: ArrayLike<number>): void {
  context.beginPath();
  let lifted = true;
  for (let i = 0; i + 1 < points.length; i += 2) {
    if (Number.isNaN(points[i]) || Number.isNaN(points[i + 1])) lifted = true;
    else if (lifted) {
      context.moveTo(points[i], points[i + 1]);
      lifted = false;
    } else context.lineTo(points[i], points[i + 1]);
  }
}

/** A fill as a repeating tile, crisp at this density. */
export function fillPattern(
  context: CanvasRenderingContext2D,
  colours: Colours,
  ink: Ink,
  fill: Fill,
  density: number,
): CanvasPattern | string {
  const side = Math.round(FILL_TILE * density);
  const tile = document.createElement("canvas");
  tile.width = side;
  tile.height = side;
  const pen = tile.getContext("2d");
  if (pen === null) return colours[ink];
  pen.scale(side / FILL_TILE, side / FILL_TILE);
  pen.globalAlpha = GROUND_OPACITY;
  pen.fillStyle = colours[ink];
  pen.fillRect(0, 0, FILL_TILE, FILL_TILE);
  pen.globalAlpha = STROKE_OPACITY;
  pen.strokeStyle = colours[ink];
  pen.lineWidth = 1.2;
  pen.lineCap = "round";
  for (const [x1, y1, x2, y2] of FILL_STROKES[fill]) {
    pen.beginPath();
    pen.moveTo(x1, y1);
    pen.lineTo(x2, y2);
    pen.stroke();
  }
  const pattern = context.createPattern(tile, "repeat");
  pattern?.setTransform(new DOMMatrix().scale(FILL_TILE / side, FILL_TILE / side));
  return pattern ?? colours[ink];
}
