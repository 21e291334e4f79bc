/** Changes that let the flap swing over the sill and past the bolt. */
import { furthestLatch, leastTipGap, lowestPoint, thickestEdge } from "../parts/clearance.ts";
import type { Computed } from "./compute.ts";
import type { Candidate } from "./suggest-remedies.ts";
import { entry } from "./suggest-round.ts";
import type { Words } from "./words.ts";

export function latchNearer({ door }: Computed, words: Words): readonly Candidate[] {
  const { latch } = door;
  if (latch === null) return [];
  const furthest = furthestLatch(door, latch);
  if (!(furthest > 0 && furthest < latch.distanceFromHinge)) return [];
  const edit = entry("latch.distanceFromHinge", furthest, "down", words.system);
  return [{ label: `Bring the latch to ${edit.text} from the hinge`, edits: [edit] }];
}

export function bottomClearance({ door, body }: Computed, words: Words): readonly Candidate[] {
  const room = lowestPoint(door).depth - body.reach;
  const edit = entry("flap.bottomClearance", room, "up", words.system);
  return [{ label: `Leave ${edit.text} below the flap, the hinge that much higher`, edits: [edit] }];
}

export function largerTipGap({ door: { latch } }: Computed, words: Words): readonly Candidate[] {
  if (latch === null) return [];
  const least = leastTipGap(latch);
  if (!(least > latch.tipGap)) return [];
  const edit = entry("latch.tipGap", least, "up", words.system);
  return [{ label: `Draw the bolt's tip back to ${edit.text} from the slot`, edits: [edit] }];
}

export function thinnerStrike({ door: { latch } }: Computed, words: Words): readonly Candidate[] {
  if (latch === null || latch.boltPoints !== "up") return [];
  const edit = entry("latch.edgeHalfWidth", thickestEdge(latch), "down", words.system);
  return [{ label: `Make the strike no thicker than twice ${edit.text}`, edits: [edit] }];
}
