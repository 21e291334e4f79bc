/** Whether the flap and what hangs on it can swing at all: over the sill, and past the bolt drawn back. */
import { edgeDip } from "../door/swept.ts";
import { type LowPart, lowestPoint, sillDepth, tipRoom } from "../parts/clearance.ts";
import type { Computed } from "./compute.ts";
import { type Rule, SAME_LENGTH, type Verdict } from "./findings-rule.ts";
import type { Words } from "./words.ts";

const NAMES: Readonly<Record<LowPart, string>> = {
  flap: "the flap's lower edge",
  strike: "the strike on the flap",
  bolt: "the bolt on the flap, drawn back,",
};

/** A sill can be cut away over the swing, so this is no failure of what the file describes. */
function sill({ door }: Computed, w: Words): Verdict {
  const { part, depth } = lowestPoint(door);
  const room = sillDepth(door) - depth;
  const name = NAMES[part];
  if (room >= -SAME_LENGTH) {
    return { status: "ok", says: `Swinging, ${name} clears the sill by ${w.length(Math.max(0, room))}` };
  }
  const nearer = part === "flap" ? "" : " or bring the latch nearer to the hinge";
  return {
    status: "caution",
    says: `${name[0].toUpperCase()}${name.slice(1)} comes ${w.length(-room)} below the sill as it swings and strikes it`,
    advice: `cut the sill away there, hang the flap higher${nearer}`,
  };
}

function tip({ door }: Computed, w: Words): Verdict | null {
  const { latch } = door;
  if (latch === null) return null;
  const room = tipRoom(latch);
  const up = latch.boltPoints === "up";
  if (room >= -SAME_LENGTH) {
    const spare = w.length(Math.max(0, room));
    return {
      status: "ok",
      says: `Drawn back, the bolt's tip and the strike swing past each other with ${spare} to spare`,
    };
  }
  const dip = up ? edgeDip(latch.edgeHalfWidth, latch.distanceFromHinge) : latch.tipGap - room;
  const [deep, gap] = w.pair(dip, latch.tipGap, "length");
  return {
    status: "caution",
    says: `The ${up ? "strike's" : "bolt's"} edges dip ${deep} as they swing by, more than the tip gap of ${gap}: the flap strikes the ${up ? "bolt" : "strike"} even when the bolt is drawn back`,
    advice: `a larger tip gap, or a thinner ${up ? "strike" : "bolt"} with rounded edges`,
  };
}

export const CLEARANCE_RULES: readonly Rule[] = [
  {
    id: "flap.clears-sill",
    part: "flap",
    concern: "swing over the sill",
    results: [],
    judge: sill,
    remedies: ["latch nearer", "bottom clearance"],
  },
  {
    id: "latch.clears-bolt",
    part: "latch",
    concern: "swing past the drawn bolt",
    results: [],
    judge: tip,
    remedies: ["larger tip gap", "thinner strike"],
  },
];
