/** Changes to the opening and the flap that fills it. */

import { setValue } from "../door/path.ts";
import { flapBody } from "../parts/flap.ts";
import { magnetMasses } from "../parts/magnets.ts";
import { hardestPush, push } from "../parts/push.ts";
import { type Computed, resistanceOf } from "./compute.ts";
import type { DoorEdit } from "./finding.ts";
import type { Rule } from "./findings-rule.ts";
import type { Candidate } from "./suggest-remedies.ts";
import { CUT, entry } from "./suggest-round.ts";
import { entryText, type Words } from "./words.ts";

/** Sheets that are sold, m: millimetres and inches (common practice, no source). */
const SHEETS = {
  metric: [2, 3, 4, 5, 6, 8, 10, 12].map((mm) => mm / 1000),
  inch: [1 / 16, 3 / 32, 1 / 8, 3 / 16, 1 / 4, 3 / 8, 1 / 2].map((inch) => inch * 0.0254),
} as const;

/** Keys that keep their place above the sill when the hinge goes up. */
function distances(computed: Computed): readonly (readonly [string, number])[] {
  const { latch, magnets, flap } = computed.door;
  const masses = flap.extraMasses.map(
    (m, i) => [`flap.extraMasses.${i}.distanceFromHinge`, m.distanceFromHinge] as const,
  );
  return [
    ["flap.height", flap.height] as const,
    ...(latch === null ? [] : [["latch.distanceFromHinge", latch.distanceFromHinge] as const]),
    ...(magnets === null ? [] : [["magnets.distanceFromHinge", magnets.distanceFromHinge] as const]),
    ...masses,
  ];
}

/** Opening and flap taller at the top: hinge up, latch and magnets where they were above the sill. */
function taller(computed: Computed, words: Words, by: number): readonly DoorEdit[] {
  const rise = Math.ceil(by / CUT[words.system] - 1e-9) * CUT[words.system];
  const { height } = computed.door.opening;
  const exactly = (path: string, value: number) => ({ path, text: entryText(path, value, words.system) });
  return [
    exactly("opening.height", height + rise),
    ...distances(computed).map(([path, at]) => exactly(path, at + rise)),
  ];
}

/** A flap is not made longer by more than this part of itself: another door is then asked for (assumption). */
const MOST_RISE = 1;

function tallerCandidate(computed: Computed, words: Words, by: number): readonly Candidate[] {
  if (!(by > 0) || by > MOST_RISE * computed.door.flap.height) return [];
  const edits = taller(computed, words, by);
  return [
    {
      label: `Make the opening ${edits[0].text} and the flap ${edits[1].text} high, hinge up and latch in place`,
      edits,
    },
  ];
}

export function higherOpening(computed: Computed, words: Words): readonly Candidate[] {
  return tallerCandidate(computed, words, -computed.fit.height);
}

export function widerOpening(computed: Computed, words: Words): readonly Candidate[] {
  const more = Math.ceil(-computed.fit.width / CUT[words.system] - 1e-9) * CUT[words.system];
  if (!(more > 0)) return [];
  const { opening, flap } = computed.door;
  const edits = (
    [
      ["opening.width", opening.width],
      ["flap.width", flap.width],
    ] as const
  ).map(([path, value]) => ({ path, text: entryText(path, value + more, words.system) }));
  return [{ label: `Make the opening ${edits[0].text} and the flap ${edits[1].text} wide`, edits }];
}

/** A lower sill, and where that leaves the opening too low, the opening cut down to it with the hinge in place. */
export function lowerSill(computed: Computed, words: Words): readonly Candidate[] {
  const { sillHeight } = computed.door.opening;
  const wanted = Math.floor((sillHeight + computed.fit.step) / CUT[words.system] + 1e-9) * CUT[words.system];
  if (!(wanted >= 0) || wanted >= sillHeight) return [];
  const sill = { path: "opening.sillHeight", text: entryText("opening.sillHeight", wanted, words.system) };
  return [
    { label: `Lower the sill, and the whole door with it, to ${sill.text}`, edits: [sill] },
    {
      label: `Cut the opening down to a sill of ${sill.text}, with a longer flap`,
      edits: [sill, ...taller(computed, words, sillHeight - wanted)],
    },
  ];
}

/** What a hinge must stand above the highest push and shoulder, m (assumption). */
const HINGE_CLEARANCE = 0.03;

/** A rise tried for a push that is only hard, m (assumption). */
const EASING_RISE = 0.05;

/** The hinge over every push and shoulder, every back below the stop; or a little higher to ease the push. */
export function higherHinge(computed: Computed, words: Words): readonly Candidate[] {
  const { animals, hinge } = computed.door;
  const { hingeHeight, body } = computed;
  const top = Math.max(...animals.flatMap((a) => [a.pushHeight, a.shoulderHeight])) + HINGE_CLEARANCE;
  const cosine = Math.cos(hinge.stopAngle);
  const shoulder = Math.max(...animals.map((a) => a.shoulderHeight));
  const below = (body.reach * cosine - (hingeHeight - shoulder)) / (1 - cosine);
  const least = Math.max(top - hingeHeight, below);
  const rises = least > 0 ? [1, 2].map((factor) => factor * least) : [EASING_RISE];
  return rises.flatMap((rise) => tallerCandidate(computed, words, rise));
}

const DEGREE = Math.PI / 180;
const STOP_STEP = 5 * DEGREE;

export function laterStop(computed: Computed, words: Words): readonly Candidate[] {
  const greatest = Math.max(...computed.crossings.map((c) => c.passage.letGoAngle));
  const edit = entry("hinge.stopAngle", greatest + DEGREE, "up", words.system, STOP_STEP);
  return [{ label: `Let the flap open to ${edit.text}`, edits: [edit] }];
}

/** The thickest sheet below the present one with which the push is easy. */
export function thinnerFlap(
  computed: Computed,
  words: Words,
  rule: Pick<Rule, "judge">,
): readonly Candidate[] {
  const passes = (thickness: number) => {
    const trial = pushedWith(computed, thickness);
    return trial !== null && rule.judge(trial, words)?.status === "ok";
  };
  const thinner = SHEETS[words.system].filter((t) => t < computed.door.flap.thickness - 1e-6).reverse();
  const sheet = thinner.find(passes);
  if (sheet === undefined) return [];
  const text = entryText("flap.thickness", sheet, words.system);
  return [{ label: `Make the flap of ${text} sheet`, edits: [{ path: "flap.thickness", text }] }];
}

/** The door's pushes with another thickness; no swing is run. */
function pushedWith(computed: Computed, thickness: number): Computed | null {
  const set = setValue(computed.door, "flap.thickness", thickness);
  if (!set.ok) return null;
  const { door } = set;
  const body = flapBody(door.flap, door.magnets === null ? [] : magnetMasses(door.magnets));
  const resistance = resistanceOf(door, { body, centring: computed.centring });
  const pushes = computed.crossings.map((c) =>
    push(c.animal, resistance, computed.hingeHeight, c.passage.letGoAngle),
  );
  return { ...computed, door, body, pushes, hardestPush: hardestPush(pushes) };
}
