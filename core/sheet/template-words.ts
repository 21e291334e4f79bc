/** What a template says about its pockets, once for a kind. */
import type { DoorPlan, Pocket } from "./door-plan.ts";
import { POCKET_WALL } from "./door-plan.ts";
import type { Sizes } from "./sizes.ts";

/** Sentences on the pockets of flap or frame; none where there are none. */
export function pocketWords(plan: DoorPlan, on: Pocket["on"], sizes: Sizes): string[] {
  const pockets = plan.pockets.filter((pocket) => pocket.on === on);
  if (pockets.length === 0) return [];
  const [first] = pockets;
  const where =
    on === "flap"
      ? first.face === "bottom edge"
        ? "the lower edge"
        : "the edge"
      : first.face === "sill"
        ? "the sill"
        : "the jamb";
  const count = `${pockets.length} ${pockets.length === 1 ? "pocket" : "pockets"}`;
  return [
    `${count} Ø ${sizes.short(first.diameter)}, ${depthWords(first, sizes)}, drilled square into ${where}.`,
    ...cheekWords(plan, on, sizes),
  ];
}

/** "4.5 deep, the magnet's face 0.5 below the edge". */
export function depthWords({ depth, recess }: Pocket, sizes: Sizes): string {
  if (depth <= 0) return "no depth: the magnet sits on the surface";
  const deep = `${sizes.short(depth)} deep`;
  if (Math.abs(recess) < 0.005) return `${deep}, the magnet flush`;
  return recess > 0
    ? `${deep}, the magnet's face ${sizes.short(recess)} below the surface`
    : `${deep}, the magnet standing ${sizes.short(-recess)} proud`;
}

function cheekWords({ cheeks, flap }: DoorPlan, on: Pocket["on"], sizes: Sizes): string[] {
  if (on !== "flap" || cheeks.length === 0) return [];
  const { left, right, top, bottom, thickness } = cheeks[0];
  return [
    `The flap is too thin for that (${sizes.short(flap.thickness)}): first glue a cheek ${sizes.short(right - left)} × ${sizes.short(bottom - top)}, ${sizes.short(thickness)} thick, to both faces at each place, flush with the edge, then drill; that leaves ${sizes.short(POCKET_WALL)} of wall around a magnet.`,
  ];
}
