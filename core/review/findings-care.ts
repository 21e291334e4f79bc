/** Hazards, what the file leaves out, and what a person must know whatever the figures: model page, last sections. */
import { STANDARD_GRAVITY } from "../parts/flap.ts";
import type { Computed } from "./compute.ts";
import type { Rule, Verdict } from "./findings-rule.ts";
import { RESULTS } from "./results.ts";
import type { Words } from "./words.ts";

/** Limit of 16 CFR 1262, ASTM F963 and ISO 8124-1 for a loose magnet, kG² mm². */
export const SWALLOW_LIMIT = 50;
/** A load on the hinge this many times the flap's weight is a second load to design for (assumption). */
export const HINGE_LOAD_CAUTION = 2;

function swallow(computed: Computed, w: Words): Verdict | null {
  if (computed.centring === null) return null;
  const index = computed.centring.figures.fluxIndex;
  const figure = `${w.number(index)} kG²·mm²`;
  const limit = `${SWALLOW_LIMIT} kG²·mm² (16 CFR 1262, ASTM F963, ISO 8124-1)`;
  if (index < SWALLOW_LIMIT)
    return {
      status: "ok",
      says: `A loose magnet's flux index is ${figure}, below ${limit}; bond the magnets in all the same`,
    };
  return {
    status: "caution",
    says: `A loose magnet's flux index is ${figure}, not below ${limit}: two swallowed by a child or a pet injure the gut`,
    advice: "bond or cap every magnet, and count them",
  };
}

/** Axial pull of the facing pairs: sideways in the jambs, along the flap in the sill. */
function hingeLoad(computed: Computed, w: Words): Verdict | null {
  const { magnets } = computed.door;
  if (computed.centring === null || magnets === null) return null;
  const { axialForce } = computed.centring.figures;
  const weight = computed.body.mass * STANDARD_GRAVITY;
  const pair = `${w.force(Math.abs(axialForce))} per facing pair`;
  const heavy = `the flap's weight is ${w.force(weight)}`;
  if (magnets.arrangement === "sill") {
    const load = axialForce * magnets.sides;
    const way = load >= 0 ? "down" : "up";
    const says = `The sill's magnets pull the flap ${way} with ${w.force(Math.abs(load))} (${pair}), and ${heavy}`;
    if (load < -weight)
      return {
        status: "caution",
        says: `${says}: they lift it off its pivots`,
        advice: "hold the hinge down, or let the magnets attract",
      };
    const much = Math.abs(load) > HINGE_LOAD_CAUTION * weight;
    return much
      ? { status: "caution", says, advice: "choose a hinge for both loads together" }
      : { status: "ok", says };
  }
  const load = axialForce * magnets.perSide;
  const one = magnets.sides === 1;
  const way = one
    ? "towards their jamb"
    : "towards each jamb; the two cancel only while the flap is in the middle";
  const says =
    `The magnets ${load >= 0 ? "pull" : "push"} the flap sideways with ${w.force(Math.abs(load))} ${way} (${pair}), and ${heavy}`.replace(
      "push the flap sideways",
      "push the flap aside",
    );
  if (Math.abs(load) <= HINGE_LOAD_CAUTION * weight) return { status: "ok", says };
  return {
    status: "caution",
    says,
    advice: "take a hinge with washers that keeps the flap from sliding sideways",
  };
}

function powerLost(computed: Computed, w: Words): Verdict | null {
  const { latch, door } = computed;
  if (latch === null || door.latch === null) return null;
  const draw = w.length(door.latch.tipGap + door.latch.engagement);
  return {
    status: "caution",
    says: `Without power the bolt stays out and the door is locked: from inside a person draws the bolt back by hand, against ${w.force(latch.boltForce)} over ${draw}`,
    advice: "leave its tail in reach from inside, and another way out for people",
  };
}

function people(computed: Computed, w: Words): Verdict {
  const force = computed.pushes[computed.hardestPush].force;
  const push = force === null ? "" : ` (here ${w.force(force)} at an animal's height)`;
  return {
    status: "caution",
    says: `The flap must stay pushable by hand from inside${push} and never trap a child or an animal; fingers are pinched at the hinge side and small parts are swallowed`,
    advice:
      "round its edges and keep gaps small; local building codes and licensed practice come before this program",
  };
}

function electrical(computed: Computed, w: Words): Verdict | null {
  const { supply, solenoid } = computed.door;
  if (supply === null && solenoid === null) return null;
  const volts = supply === null ? "the coil" : `the ${w.voltage(supply.voltage)}`;
  return {
    status: "caution",
    says: `Feed ${volts} from a listed, limited-energy adapter, never mains inside the door, and route the cord where neither flap nor door can pinch it`,
    advice: "local electrical codes and licensed practice come before this program",
  };
}

function release(computed: Computed, w: Words): Verdict | null {
  const { angle, speed } = computed.door.release;
  if (angle === null && speed === 0) return null;
  const { swing, animal, passage } = computed.governing;
  const from = `${w.angle(Math.abs(swing.releaseAngle))}${speed === 0 ? "" : ` at ${w.of(Math.abs(speed), "angularSpeed")}`}`;
  return {
    status: "caution",
    says: `The swing starts from the file's release, ${from}, not where ${animal.name} lets the flap go at rest, ${w.angle(passage.letGoAngle)}: the hold is that of this swing`,
    advice: "take the release section out to judge the door",
  };
}

/** Results of one section that do not exist, and those of others that need it. */
function absent(computed: Computed, names: readonly string[]): readonly string[] {
  return RESULTS.filter((r) => names.some((n) => r.name.startsWith(n)) && r.value(computed) === null).map(
    (r) => r.name,
  );
}

interface Section {
  readonly key: "magnets" | "latch" | "solenoid" | "driver" | "timer" | "supply";
  /** "ok" where a door does well without. */
  readonly status: "ok" | "caution";
  readonly says: string;
  /** Results that are not there without it, by the start of their names. */
  readonly results: readonly string[];
}

const COIL_AND_BOLT = ["solenoid.pullInTime", "solenoid.releaseTime", "solenoid.sideLoadLimit"];
const POWERED = [
  "solenoid.current",
  "solenoid.holdTemperature",
  "solenoid.continuousTemperature",
  "driver.",
  "supply.",
  ...COIL_AND_BOLT,
];

const SECTIONS: readonly Section[] = [
  {
    key: "magnets",
    status: "ok",
    says: "No centring magnets: gravity alone brings the flap to the centre",
    results: ["magnets."],
  },
  {
    key: "latch",
    status: "caution",
    says: "The file has no latch, so nothing is said about settling, the hold or the bolt",
    results: [
      "latch.",
      "swing.settleTime",
      "hold.",
      "wind.gustSpeed",
      "solenoid.pullInVoltage",
      ...COIL_AND_BOLT,
    ],
  },
  {
    key: "solenoid",
    status: "caution",
    says: "The file has no solenoid, so nothing is said about pulling the bolt, its current and its heat",
    results: ["solenoid.", ...POWERED],
  },
  {
    key: "driver",
    status: "caution",
    says: "The file has no driver, so the coil's current, heat, pull-in and release are not known",
    results: ["solenoid.pullInVoltage", ...POWERED],
  },
  {
    key: "timer",
    status: "caution",
    says: "The file has no timer, so no hold is judged and no relatch worked out",
    results: ["timer.", "hold.setting", "solenoid.holdTemperature"],
  },
  {
    key: "supply",
    status: "caution",
    says: "The file has no supply, so the coil's current, heat and pull-in and the regulator's heat are not known",
    results: ["regulator.", ...POWERED],
  },
];

function missing(section: Section): Rule {
  const { key, status, says, results } = section;
  return {
    id: `missing.${key}`,
    part: key,
    concern: `no ${key}`,
    results: [],
    judge: (computed) =>
      computed.door[key] === null
        ? { status, says, advice: `add a ${key} section`, alsoNames: absent(computed, results) }
        : null,
  };
}

export const CARE_RULES: readonly Rule[] = [
  {
    id: "magnets.swallow",
    part: "magnets",
    concern: "a loose magnet swallowed",
    results: ["magnets.fluxIndex"],
    judge: swallow,
  },
  {
    id: "magnets.hinge-load",
    part: "magnets",
    concern: "magnets' load on the hinge",
    results: ["magnets.axialForce", "flap.mass"],
    judge: hingeLoad,
    remedies: ["lighter pull"],
  },
  {
    id: "release.override",
    part: "flap",
    concern: "swing by hand",
    results: ["swing.releaseAngle"],
    judge: release,
  },
  ...SECTIONS.map(missing),
  {
    id: "care.power-lost",
    part: "latch",
    concern: "power lost",
    results: ["latch.boltRiseTime"],
    judge: powerLost,
  },
  {
    id: "care.people",
    part: "flap",
    concern: "children, animals and fingers",
    results: ["push.force"],
    judge: people,
  },
  {
    id: "care.electrical",
    part: "supply",
    concern: "supply and cord",
    results: ["supply.current"],
    judge: electrical,
  },
];
