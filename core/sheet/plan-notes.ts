/** What a builder must see before cutting: places where parts of the file's door would meet. */
import { sweptDepth } from "../door/swept.ts";
import type { DoorPlan } from "./door-plan.ts";
import type { Sizes } from "./sizes.ts";

/** A length that is none, mm. */
const NOTHING = 0.005;

/** Sentences; empty where everything clears. */
export function planNotes(plan: DoorPlan, sizes: Sizes): string[] {
  return [...strikeNotes(plan, sizes), ...magnetNotes(plan, sizes), ...sideNotes(plan, sizes)];
}

function strikeNotes({ strike, opening, flap }: DoorPlan, sizes: Sizes): string[] {
  if (strike === null) return [];
  const deep = sweptDepth(strike.mouth, strike.halfThickness) - opening.sill;
  if (strike.on === "flap" && deep > NOTHING) {
    return [
      `The strike reaches ${sizes.long(deep)} into the sill and cannot swing: before cutting, raise the hinge (a larger clearance below the flap), bring the latch nearer to the hinge, or cut the sill away there.`,
    ];
  }
  if (strike.on === "frame") return sillStrikeNotes(strike, opening.sill, flap.bottom, sizes);
  return [];
}

/** A strike on the sill is let into it or stands on a shim, and the flap must pass over it. */
function sillStrikeNotes(
  strike: NonNullable<DoorPlan["strike"]>,
  sill: number,
  flapBottom: number,
  sizes: Sizes,
): string[] {
  const deep = strike.back - sill;
  const notes = ["Bolt and solenoid hang on the flap: their mass must stand among the file's extra masses."];
  if (deep > NOTHING) notes.push(`The strike is let ${sizes.long(deep)} into the sill.`);
  if (deep < -NOTHING) notes.push(`The strike stands on a shim of ${sizes.long(-deep)} on the sill.`);
  if (flapBottom > strike.mouth + NOTHING) {
    notes.push(
      `The strike on the sill stands ${sizes.long(flapBottom - strike.mouth)} above the flap's lower edge: notch the flap there.`,
    );
  }
  return notes;
}

function magnetNotes({ pockets }: DoorPlan, sizes: Sizes): string[] {
  const proud = pockets.find(({ recess }) => recess < -NOTHING);
  if (proud === undefined) return [];
  const where = proud.looks[1] === 0 ? "beside" : "below";
  return [
    `The gap is narrower than the room ${where} the flap: magnets stand ${sizes.long(-proud.recess)} proud of their surface. Cap them, or make the room narrower.`,
  ];
}

function sideNotes({ opening, flap }: DoorPlan, sizes: Sizes): string[] {
  const room = opening.half - flap.half;
  return room > NOTHING
    ? []
    : [
        `The flap is ${sizes.long(-2 * room)} wider than its opening: it swings in front of the frame only, or not at all.`,
      ];
}
