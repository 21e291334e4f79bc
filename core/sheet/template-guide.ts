/** The first page of a printed template: how its pages go together, with a map of each drawing. */
import {
  type Drawing,
  type Layer,
  type LayerName,
  type Point,
  type Primitive,
  rectangle,
  text,
} from "./drawing.ts";
import { type Block, checklist, type Page, paragraph, textRoom } from "./page.ts";
import type { Paper } from "./paper.ts";
import { plainPrimitives } from "./plain.ts";
import { OVERLAP } from "./tile.ts";
import { tiling } from "./tiles.ts";

/** Layers that still say something when small. */
const ON_MAP: readonly LayerName[] = ["CUT", "LATCH", "MAGNETS", "OUTLINE", "DRILL"];

/** `drawings` are at full size, in the order they are printed. */
export function templateGuide(door: string, drawings: readonly Drawing[], paper: Paper): Page {
  const many = drawings.some((drawing) => tiling(drawing, paper).tiles.length > 1);
  return {
    title: "Drill template",
    door,
    blocks: [
      paragraph(
        "Full size. Everything is seen from outdoors; the jambs are mirror images of each other.",
        "lead",
      ),
      checklist(steps(paper, many)),
      maps(drawings, paper),
    ],
  };
}

function steps(paper: Paper, many: boolean): string[] {
  const glue = many
    ? [
        `Cut each page along its frame on the right and at the foot, lay it over its neighbour and turn it until circle and cross of every register mark meet: neighbours share ${OVERLAP} mm. Tape it.`,
      ]
    : [];
  return [
    `Print on ${paper.title} at 100 %, “actual size”, never “fit to page”.`,
    "Lay a steel rule on the 100 mm scale and on the 4 in scale of every page. If either is off by more than half a millimetre, print again.",
    ...glue,
    "Red is cut, blue is drilled, green is the latch, violet is a magnet with the pole that shows. Dashed is hidden, chain-dotted is an axis.",
    "Punch every cross before drilling. Drill square to the edge, to the depth written beside it: tape around the drill is a stop.",
    "Mark the pole on every magnet with a pen before gluing: its N pole draws the south end of a compass needle. The arrows point to N.",
  ];
}

/** All maps side by side at one scale. */
function maps(drawings: readonly Drawing[], paper: Paper): Block {
  const room = textRoom(paper);
  const gap = 10;
  const plans = drawings.map((drawing) => ({ drawing, tiles: tiling(drawing, paper).tiles }));
  const extents = plans.map(({ tiles }) => ({
    left: Math.min(...tiles.map(({ left }) => left)),
    top: Math.min(...tiles.map(({ top }) => top)),
    right: Math.max(...tiles.map(({ left, width }) => left + width)),
    bottom: Math.max(...tiles.map(({ top, height }) => top + height)),
  }));
  const wide = extents.reduce((sum, { left, right }) => sum + right - left, 0);
  const tall = Math.max(...extents.map(({ top, bottom }) => bottom - top));
  const share = Math.min((room.width - gap * (plans.length - 1)) / wide, (room.height - 120) / tall);
  const layers: Layer[] = [];
  let x = 0;
  plans.forEach(({ drawing, tiles }, i) => {
    const { left, top, right } = extents[i];
    const shift: Point = [x - left * share, 6 - top * share];
    layers.push(...onMap(drawing, share, shift), mapWords(drawing, tiles, share, shift, x));
    x += (right - left) * share + gap;
  });
  return {
    kind: "picture",
    drawing: {
      title: "Map of the pages",
      widthMm: room.width,
      heightMm: tall * share + 8,
      layers,
      fine: true,
    },
    caption: "Which page holds what.",
  };
}

function onMap(drawing: Drawing, share: number, [dx, dy]: Point): Layer[] {
  const move = ([px, py]: Point): Point => [px * share + dx, py * share + dy];
  return drawing.layers
    .filter(({ name }) => ON_MAP.includes(name))
    .map(({ name, items }) => ({
      name,
      items: plainPrimitives(items).flatMap((item): Primitive[] => {
        if (item.kind === "text") return [];
        if (item.kind === "line") return [{ ...item, from: move(item.from), to: move(item.to) }];
        if (item.kind === "polyline") return [{ ...item, points: item.points.map(move) }];
        return [{ ...item, centre: move(item.centre), radius: item.radius * share }];
      }),
    }));
}

function mapWords(
  drawing: Drawing,
  tiles: readonly { name: string; left: number; top: number; width: number; height: number }[],
  share: number,
  [dx, dy]: Point,
  x: number,
): Layer {
  const frames = tiles.map(({ left, top, width, height }) =>
    rectangle(left * share + dx, top * share + dy, (left + width) * share + dx, (top + height) * share + dy),
  );
  const names =
    tiles.length === 1
      ? []
      : tiles.map(({ name, left, top }) =>
          // Within the page's own part, clear of the strip it shares.
          text([(left + OVERLAP) * share + dx + 1.5, (top + OVERLAP) * share + dy + 4], name, {
            size: 3.2,
            strong: true,
            clear: true,
          }),
        );
  return {
    name: "REGISTER",
    items: [
      ...frames,
      ...names,
      text([x, 3.4], drawing.title.split(": ").at(-1) ?? "", { size: 3.2, strong: true }),
    ],
  };
}
