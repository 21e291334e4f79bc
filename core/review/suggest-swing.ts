/** Changes that move or free the place where the flap rests: gap, slot, tilt, pressure, friction. */

import { setValue } from "../door/path.ts";
import { STANDARD_GRAVITY } from "../parts/flap.ts";
import { windFactor } from "../parts/gust.ts";
import { axialPull, remanenceAt } from "../parts/magnet.ts";
import { magnetPair, torquePerRemanence2 } from "../parts/magnets.ts";
import { dryFriction, pushTorque } from "../parts/push.ts";
import { nearestRestSet } from "../swing/rest.ts";
import { frictionAt, type SwingSystem, swingSystem } from "../swing/system.ts";
import { staticTorque } from "../swing/torque.ts";
import { type Computed, resistanceOf } from "./compute.ts";
import type { DoorEdit } from "./finding.ts";
import { HINGE_LOAD_CAUTION } from "./findings-care.ts";
import { edgeReserve, FRICTION_SPREAD, narrowed, playFor, reserveElsewhere } from "./findings-reserve.ts";
import { NEAR } from "./findings-rule.ts";
import { GENTLE_BREEZE, SHIFT_CAUTION, shiftOf } from "./findings-shift.ts";
import { editValue } from "./suggest-apply.ts";
import type { Candidate } from "./suggest-remedies.ts";
import { type Direction, entry } from "./suggest-round.ts";
import { side, type Words } from "./words.ts";

/** Faces are not brought nearer than this: a flap sags and rubs (assumption), m. */
const LEAST_GAP = 1e-3;
/** Nor further than this many times the present gap: the magnets then do nothing. */
const MOST_GAP = 6;
/** A slot is not made wider than this many times its play: another fault is then at work. */
const MOST_PLAY = 4;
/** A solved figure is taken this much further, so that what was left out in solving does not spoil it. */
const SOLVING_RESERVE = 1.01;

/** The magnets' torque at another gap, N m, integrated anew: once for an angle and its mirror image asked after it. */
function torqueAtGap(computed: Computed, gap: number): (angle: number) => number {
  const { magnets } = computed.door;
  if (magnets === null) return () => 0;
  const square = remanenceAt(magnets.remanence, magnets.temperature) ** 2;
  const torque = torquePerRemanence2(magnets, gap);
  let [size, pull] = [0, 0];
  return (angle) => {
    if (Math.abs(angle) !== size) [size, pull] = [Math.abs(angle), square * torque(Math.abs(angle))];
    return angle < 0 ? -pull : pull;
  };
}

/** The gap nearest the present one that passes, rounded away from it; `good` must pass. */
function narrowedGap(
  computed: Computed,
  words: Words,
  passes: (gap: number) => boolean,
  good: number,
): readonly Candidate[] {
  const present = computed.door.magnets?.gap ?? good;
  const direction: Direction = good < present ? "down" : "up";
  const rounded = (gap: number) => entry("magnets.gap", gap, direction, words.system);
  const alike = (pass: number, fail: number) => rounded(pass).text === rounded(fail).text;
  const edit = rounded(narrowed(passes, good, present, alike));
  const verb = good < present ? "Bring the magnets to" : "Move the magnets apart to";
  return [{ label: `${verb} a gap of ${edit.text}`, edits: [edit] }];
}

/** The widest gap below the present one at which `passes`; none where even the least does not. */
function solveGap(computed: Computed, words: Words, passes: (gap: number) => boolean): readonly Candidate[] {
  const present = computed.door.magnets?.gap ?? 0;
  if (present <= LEAST_GAP || !passes(LEAST_GAP)) return [];
  return narrowedGap(computed, words, passes, LEAST_GAP);
}

/** Magnets near enough that the flap comes back from the ends of the bolt's play, with more friction than stated. */
export function smallerGap(computed: Computed, words: Words): readonly Candidate[] {
  const { latch, system, door } = computed;
  if (latch === null || door.magnets === null) return [];
  const bare = { ...system, magnets: null };
  const returns = (gap: number, sign: number) => {
    const angle = latch.centre + sign * latch.capture;
    const back = -sign * (staticTorque(bare, angle) + torqueAtGap(computed, gap)(angle));
    return back >= SOLVING_RESERVE * FRICTION_SPREAD * system.staticRatio * frictionAt(system, angle);
  };
  return solveGap(computed, words, (gap) => returns(gap, 1) && returns(gap, -1));
}

/** Magnets near enough that a gentle breeze does not carry the flap past the end of the bolt's play. */
export function gapAgainstGusts(computed: Computed, words: Words): readonly Candidate[] {
  const { latch, system, door, body } = computed;
  if (latch === null || door.magnets === null) return [];
  const { air, hinge, seal } = door;
  const factor = windFactor(air.density, air.dragCoefficient, body.width, body.reach, body.hingeOffset);
  const bare = { ...system, magnets: null, air: { ...system.air, wind: 0 } };
  const holds = (gap: number, sign: number) => {
    const angle = latch.centre + sign * latch.capture;
    const friction =
      hinge.staticRatio * dryFriction(hinge.frictionTorque, seal.frictionTorque, seal.contactAngle, angle);
    const back = -sign * (staticTorque(bare, angle) + torqueAtGap(computed, gap)(angle)) + friction;
    return back / Math.cos(angle) ** 2 >= SOLVING_RESERVE * factor * GENTLE_BREEZE ** 2;
  };
  return solveGap(computed, words, (gap) => holds(gap, 1) && holds(gap, -1));
}

/** Angles at which a push is looked at while a gap is sought, close together near the centre where magnets peak. */
const PUSH_SAMPLES = 48;

/** Magnets far enough apart that every animal is at ease with the push. */
export function widerGap(computed: Computed, words: Words): readonly Candidate[] {
  const { magnets } = computed.door;
  if (magnets === null) return [];
  const bare = { ...resistanceOf(computed.door, computed), magnetTorque: () => 0 };
  const angles = Array.from({ length: PUSH_SAMPLES }, (_, i) => 0.3 * (i / (PUSH_SAMPLES - 1)) ** 2);
  const most = Math.min(
    ...computed.pushes.map(
      (p, i) => NEAR * p.limit * (computed.hingeHeight - computed.door.animals[i].pushHeight),
    ),
  );
  const passes = (gap: number) => {
    const torque = torqueAtGap(computed, gap);
    return angles.every((angle) => SOLVING_RESERVE * (pushTorque(bare, angle) - torque(angle)) <= most);
  };
  const widest = MOST_GAP * magnets.gap;
  if (!passes(widest)) return [];
  return narrowedGap(computed, words, passes, widest);
}

/** How far out the discs' torque turns against gravity: beyond their own width sideways (from the field of a disc), rad. */
const REVERSAL_ENDS = 0.4;

/** Magnets far enough apart that beyond their reach, where discs push away, gravity and not they decide. */
export function gapForReturn(computed: Computed, words: Words): readonly Candidate[] {
  const { latch, system, door } = computed;
  if (latch === null || door.magnets === null) return [];
  const bare = { ...system, magnets: null };
  const end = Math.min(REVERSAL_ENDS, system.stopAngle - Math.abs(latch.centre));
  const away = Array.from(
    { length: PUSH_SAMPLES },
    (_, i) => latch.capture + ((end - latch.capture) * i) / (PUSH_SAMPLES - 1),
  );
  const angles = away.flatMap((half) => [latch.centre - half, latch.centre + half]);
  const passes = (gap: number) => {
    const torque = torqueAtGap(computed, gap);
    return angles.every((angle) => {
      const back = -Math.sign(angle - latch.centre) * (staticTorque(bare, angle) + torque(angle));
      return back >= SOLVING_RESERVE * FRICTION_SPREAD * system.staticRatio * frictionAt(system, angle);
    });
  };
  const widest = MOST_GAP * door.magnets.gap;
  const coarse = [1.25, 1.5, 2, 3, 4, MOST_GAP].map((factor) => factor * (door.magnets?.gap ?? widest));
  const good = coarse.find(passes);
  if (good === undefined) return [];
  return narrowedGap(computed, words, passes, good);
}

/** Magnets far enough apart that their pull is no second load on the hinge. */
export function lighterPull(computed: Computed, words: Words): readonly Candidate[] {
  const { magnets } = computed.door;
  if (magnets === null) return [];
  const count = magnets.arrangement === "sill" ? magnets.sides : magnets.perSide;
  const remanence = remanenceAt(magnets.remanence, magnets.temperature);
  const most = HINGE_LOAD_CAUTION * computed.body.mass * STANDARD_GRAVITY;
  const passes = (gap: number) => count * axialPull(magnetPair(magnets, gap), remanence) <= most;
  const widest = MOST_GAP * magnets.gap;
  if (!passes(widest)) return [];
  return narrowedGap(computed, words, passes, widest);
}

export function attracting(computed: Computed): readonly Candidate[] {
  if (computed.door.magnets?.force !== "repel") return [];
  return [
    {
      label: "Turn one magnet of each facing pair over, so that they attract",
      edits: [{ path: "magnets.force", text: "attract" }],
    },
  ];
}

/** A slot wide enough for what the flap can be off, the shift within its share of the play, friction within its spread. */
export function widerSlot(computed: Computed, words: Words): readonly Candidate[] {
  const { latch, system, door } = computed;
  if (latch === null || door.latch === null) return [];
  const { slotWidth, boltWidth, distanceFromHinge, edgeHalfWidth } = door.latch;
  const play = playFor(system, latch.centre, computed.deadBand, FRICTION_SPREAD);
  const shifted = computed.deadBand / SHIFT_CAUTION;
  const wanted = [play, shifted].filter((half) => half !== null && half > latch.capture) as number[];
  return wanted.flatMap((half) => {
    const width = boltWidth + 2 * distanceFromHinge * Math.sin(half);
    if (width - boltWidth > MOST_PLAY * (slotWidth - boltWidth)) return [];
    const slot = entry("latch.slotWidth", width, "up", words.system);
    const label = `Widen the slot to ${slot.text}`;
    if (edgeHalfWidth >= width / 2 + 1e-4) return [{ label, edits: [slot] }];
    const edge = entry("latch.edgeHalfWidth", edgeHalfWidth + (width - slotWidth) / 2, "up", words.system);
    const thick = 2 * (editValue(edge) ?? edgeHalfWidth);
    return [{ label: `${label} (and its edge to ${words.length(thick)})`, edits: [slot, edge] }];
  });
}

/** The slot moved to the middle of where the flap rests. */
export function slotOffset(computed: Computed, words: Words): readonly Candidate[] {
  const { latch } = computed.door;
  if (latch === null || computed.latch === null) return [];
  const set = nearestRestSet(computed.restSets, computed.latch.centre);
  const offset = latch.distanceFromHinge * Math.sin((set.low + set.high) / 2);
  // Further than its own width is no matter of where the slot is cut.
  if (Math.abs(offset - latch.offset) > latch.slotWidth) return [];
  const edit = entry("latch.offset", offset, "nearest", words.system);
  const move = (editValue(edit) ?? offset) - latch.offset;
  const way = side(move);
  return [
    {
      label: `Move the slot ${words.length(Math.abs(move))} ${way} (offset ${edit.text})`,
      edits: [edit],
    },
  ];
}

/** The equation of motion with one number of the door changed; the flap's body and its magnets are not. */
function systemWith(computed: Computed, path: string, value: number): SwingSystem | null {
  const set = setValue(computed.door, path, value);
  const { latch, body, centring } = computed;
  if (!set.ok || latch === null) return null;
  const capture = { centre: latch.centre, half: latch.capture };
  return swingSystem(set.door, body, centring?.table ?? null, capture);
}

/** Whether the flap comes back from everywhere outside the bolt's play, with room for friction. */
function comesBack(computed: Computed, system: SwingSystem | null): boolean {
  const { latch } = computed;
  if (system === null || latch === null) return false;
  return (
    edgeReserve(system, latch.centre, latch.capture) >= FRICTION_SPREAD &&
    reserveElsewhere(system, latch.centre, latch.capture).least >= FRICTION_SPREAD
  );
}

/** The same, and what shifts its resting place takes no more than its share of the play. */
function comesBackCentred(computed: Computed, system: SwingSystem | null): boolean {
  const { latch } = computed;
  if (system === null || latch === null || !comesBack(computed, system)) return false;
  return shiftOf(system, latch.centre, latch.capture) <= SHIFT_CAUTION * latch.capture;
}

/** Halvings of the number sought: enough for two digits. */
const HALVINGS = 8;

/** The entry nearest the present value, towards 0, with which the flap comes back; `null` where none does. */
function towardsZero(
  computed: Computed,
  words: Words,
  path: string,
  present: number,
  good: typeof comesBack,
): DoorEdit | null {
  const passes = (value: number) => good(computed, systemWith(computed, path, value));
  if (present === 0 || !passes(0)) return null;
  let [pass, fail] = [0, present];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (pass + fail) / 2;
    if (passes(middle)) pass = middle;
    else fail = middle;
  }
  const edit = entry(path, Math.abs(pass), "down", words.system);
  return present < 0 && !isZero(edit) ? { ...edit, text: `-${edit.text}` } : edit;
}

function isZero({ text }: DoorEdit): boolean {
  return /^0(\D|$)/.test(text) && !/^0\.\d/.test(text);
}

/** An entry's text without its sign: an amount, whichever way. */
function amount({ text }: DoorEdit): string {
  return text.replace("-", "");
}

export function plumbFrame(computed: Computed, words: Words): readonly Candidate[] {
  const edit = towardsZero(
    computed,
    words,
    "opening.outOfPlumb",
    computed.door.opening.outOfPlumb,
    comesBackCentred,
  );
  return edit === null ? [] : [{ label: `Plumb the frame to within ${amount(edit)}`, edits: [edit] }];
}

export function lessPressure(computed: Computed, words: Words): readonly Candidate[] {
  const path = "air.pressureDifference";
  const edit = towardsZero(computed, words, path, computed.door.air.pressureDifference, comesBackCentred);
  if (edit === null) return [];
  return [{ label: `Vent the room so that the pressure differs by ${amount(edit)} at most`, edits: [edit] }];
}

export function lessFriction(computed: Computed, words: Words): readonly Candidate[] {
  const path = "hinge.frictionTorque";
  const edit = towardsZero(computed, words, path, computed.door.hinge.frictionTorque, comesBack);
  if (edit === null || isZero(edit)) return [];
  return [{ label: `Ease the hinge to a friction of ${edit.text}`, edits: [edit] }];
}

export function lessSealFriction(computed: Computed, words: Words): readonly Candidate[] {
  const path = "seal.frictionTorque";
  const edit = towardsZero(computed, words, path, computed.door.seal.frictionTorque, comesBack);
  if (edit === null) return [];
  const label = isZero(edit) ? "Leave the seal out" : `Ease the seal to a friction of ${edit.text}`;
  return [{ label, edits: [edit] }];
}
