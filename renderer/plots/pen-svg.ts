/** A pen that writes SVG: text in, text out, no page needed. */

import type { Fill, Ink } from "./figure.ts";
import { FILL_STROKES, FILL_TILE, GROUND_OPACITY, type Pen, type PenLook, STROKE_OPACITY } from "./pen.ts";

export interface SvgPen extends Pen {
  /** The whole document. `title` is its name for those who do not see it. */
  finish(title: string): string;
}

export function svgPen(width: number, height: number, { colours, face }: PenLook): SvgPen {
  const body: string[] = [];
  const patterns = new Map<string, string>();
  let clips = 0;
  const pattern = (ink: Ink, fill: Fill): string => {
    const id = `fill-${ink}-${fill}`;
    if (!patterns.has(id)) patterns.set(id, patternText(id, colours[ink], fill));
    return id;
  };
  return {
    rect(x, y, w, h, ink, opacity) {
      const attributes = `x="${n(x)}" y="${n(y)}" width="${n(w)}" height="${n(h)}"`;
      body.push(`<rect ${attributes} fill="${colours[ink]}"${opacity < 1 ? ` opacity="${opacity}"` : ""}/>`);
    },
    line(points, { ink, width: stroke, dash }) {
      const dashes = dash.length > 0 ? ` stroke-dasharray="${dash.join(" ")}"` : "";
      body.push(
        `<path d="${pathText(points)}" fill="none" stroke="${colours[ink]}" stroke-width="${stroke}"${dashes} stroke-linejoin="round"/>`,
      );
    },
    area(points, ink, fill) {
      body.push(`<path d="${pathText(points)}z" fill="url(#${pattern(ink, fill)})"/>`);
    },
    dot(x, y, radius, ink, shape) {
      const place =
        shape === "round"
          ? `<circle cx="${n(x)}" cy="${n(y)}" r="${n(radius)}"`
          : `<rect x="${n(x - radius)}" y="${n(y - radius)}" width="${n(2 * radius)}" height="${n(2 * radius)}"`;
      body.push(`${place} fill="${colours.well}" stroke="${colours[ink]}" stroke-width="2"/>`);
    },
    text(x, y, text, { ink, size, weight, anchor, upright }) {
      const turn = upright ? ` transform="rotate(-90 ${n(x)} ${n(y)})"` : "";
      body.push(
        `<text x="${n(x)}" y="${n(y)}" font-size="${n(size)}" font-weight="${weight}" text-anchor="${anchor}" fill="${colours[ink]}"${turn}>${escaped(text)}</text>`,
      );
    },
    clip(x, y, w, h) {
      clips++;
      body.push(
        `<clipPath id="clip-${clips}"><rect x="${n(x)}" y="${n(y)}" width="${n(w)}" height="${n(h)}"/></clipPath>`,
        `<g clip-path="url(#clip-${clips})">`,
      );
    },
    unclip() {
      body.push("</g>");
    },
    finish(title) {
      const size = `width="${n(width)}" height="${n(height)}" viewBox="0 0 ${n(width)} ${n(height)}"`;
      const defs = patterns.size === 0 ? "" : `<defs>${[...patterns.values()].join("")}</defs>\n`;
      return [
        `<svg xmlns="http://www.w3.org/2000/svg" ${size} font-family="${escaped(face)}">`,
        `<title>${escaped(title)}</title>`,
        `${defs}${body.join("\n")}`,
        "</svg>\n",
      ].join("\n");
    },
  };
}

/** A coordinate, to a twentieth of a pixel. */
function n(value: number): string {
  const rounded = Math.round(value * 20) / 20;
  return String(rounded === 0 ? 0 : rounded);
}

function pathText(points: ArrayLike<number>): string {
  let text = "";
  let lifted = true;
  for (let i = 0; i + 1 < points.length; i += 2) {
    if (Number.isNaN(points[i]) || Number.isNaN(points[i + 1])) {
      lifted = true;
      continue;
    }
    text += `${lifted ? "M" : "L"}${n(points[i])} ${n(points[i + 1])}`;
    lifted = false;
  }
  return text;
}

function patternText(id: string, colour: string, fill: Fill): string {
  const strokes = FILL_STROKES[fill].map(([x1, y1, x2, y2]) => `M${x1} ${y1}L${x2} ${y2}`).join("");
  const lines =
    strokes === ""
      ? ""
      : `<path d="${strokes}" stroke="${colour}" stroke-width="1.2" stroke-linecap="round" opacity="${STROKE_OPACITY}"/>`;
  return `<pattern id="${id}" width="${FILL_TILE}" height="${FILL_TILE}" patternUnits="userSpaceOnUse"><rect width="${FILL_TILE}" height="${FILL_TILE}" fill="${colour}" opacity="${GROUND_OPACITY}"/>${lines}</pattern>`;
}

function escaped(text: string): string {
  return text
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;");
}
