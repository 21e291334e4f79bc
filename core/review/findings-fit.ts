/** Does the animal fit, can it lift the flap, can it push it: model page, section 6. */
import type { Fit } from "../parts/opening.ts";
import type { Computed } from "./compute.ts";
import { againstLimit, type Rule, SAME_LENGTH, type Verdict } from "./findings-rule.ts";
import { listed, type Words } from "./words.ts";

/** The animal with the least room in one figure, and that room. */
function tightest(computed: Computed, figure: keyof Fit) {
  const each = computed.fit.each.map((fit) => fit[figure]);
  const spare = Math.min(...each);
  return { animal: computed.door.animals[each.indexOf(spare)], spare };
}

function fits(spare: number): boolean {
  return spare >= -SAME_LENGTH;
}

function height(computed: Computed, w: Words): Verdict {
  const { opening } = computed.door;
  const { animal, spare } = tightest(computed, "height");
  const margin = w.length(opening.heightMargin);
  if (fits(spare)) {
    const room = w.length(Math.max(0, spare));
    return {
      status: "ok",
      says: `${animal.name} passes with ${room} to spare above its back and the margin of ${margin}`,
    };
  }
  const needed = animal.shoulderHeight - opening.sillHeight + opening.heightMargin;
  const [has, needs] = w.pair(opening.height, needed, "length");
  return {
    status: "fail",
    says: `${animal.name}'s back needs ${needs} of height with the margin of ${margin}, the opening has ${has}: ${w.length(-spare)} too little`,
    advice: "make the opening higher",
  };
}

function width(computed: Computed, w: Words): Verdict {
  const { opening } = computed.door;
  const { animal, spare } = tightest(computed, "width");
  const margin = w.length(opening.widthMargin);
  if (fits(spare)) {
    return {
      status: "ok",
      says: `${animal.name} passes with ${w.length(Math.max(0, spare))} to spare beside its chest and the margin of ${margin}`,
    };
  }
  const [has, needs] = w.pair(opening.width, animal.chestWidth + opening.widthMargin, "length");
  return {
    status: "fail",
    says: `${animal.name}'s chest needs ${needs} of width with the margin of ${margin}, the opening has ${has}: ${w.length(-spare)} too little`,
    advice: "make the opening wider",
  };
}

function step(computed: Computed, w: Words): Verdict {
  const { sillHeight } = computed.door.opening;
  const { animal, spare } = tightest(computed, "step");
  const [sill, highest] = w.pair(sillHeight, animal.stepRatio * animal.shoulderHeight, "length");
  if (fits(spare)) {
    return {
      status: "ok",
      says: `${animal.name} steps over the sill of ${sill} with ease: up to ${highest}`,
    };
  }
  return {
    status: "fail",
    says: `The sill of ${sill} is ${w.length(-spare)} higher than ${animal.name} steps with ease, ${highest}`,
    advice: "lower the sill, or put a step before it",
  };
}

/** The hinge must be above push and shoulder of every animal, or no flap of any weight lets it through. */
function hingeHeight(computed: Computed, w: Words): Verdict {
  const hinge = computed.hingeHeight;
  const low = computed.crossings.filter((c) => c.passage.failures.some((f) => f !== "let go beyond stop"));
  if (low.length === 0) {
    const shoulders = computed.door.animals.map((a) => a.shoulderHeight);
    const [at, over] = w.pair(hinge, Math.max(...shoulders), "length");
    return {
      status: "ok",
      says: `The hinge is ${at} above the floor, over every shoulder (${over}) and every push`,
    };
  }
  const faults = low.map(({ animal, passage }) => {
    const shoulder = passage.failures.includes("shoulder not below hinge");
    const [what, high] = shoulder ? ["shoulder", animal.shoulderHeight] : ["push", animal.pushHeight];
    return `${animal.name}'s ${what} (${w.length(high)})`;
  });
  return {
    status: "fail",
    says: `The hinge is ${w.length(hinge)} above the floor, not over ${listed(faults)}, so the flap cannot be pushed open from below it`,
    advice: "hang the flap higher: a higher opening and a longer flap",
    alsoNames: ["push.force", "push.energy"],
  };
}

/** A flap that meets its stop before it lets the back pass jams on the animal. */
function stopAngle(computed: Computed, w: Words): Verdict {
  const stop = computed.door.hinge.stopAngle;
  const angles = computed.crossings.map((c) => c.passage.letGoAngle);
  const greatest = Math.max(...angles);
  const { animal } = computed.crossings[angles.indexOf(greatest)];
  const [at, limit] = w.pair(greatest, stop, "angle");
  if (greatest < stop)
    return {
      status: "ok",
      says: `The flap rides on ${animal.name}'s back at ${at}, short of its stop at ${limit}`,
    };
  return {
    status: "fail",
    says: `${animal.name}'s back lifts the flap to ${at}, but the stop holds it at ${limit}`,
    advice: "let the flap open further, or hang it higher",
  };
}

/** An edge that clears the back is let go closed: the hold is then that of a flap that never moved. */
function lifts(computed: Computed, w: Words): Verdict {
  const edge = computed.hingeHeight - computed.body.reach;
  const under = computed.crossings.filter((c) => c.passage.letGoAngle === 0).map((c) => c.animal);
  if (under.length === 0) {
    const { animal, passage } = computed.governing;
    return {
      status: "ok",
      says: `${animal.name} carries the flap at ${w.angle(passage.letGoAngle)} and lets it go ${w.time(passage.passTime)} after its nose is at the door`,
    };
  }
  const names = under.map((animal) => `${animal.name} (${w.length(animal.shoulderHeight)})`);
  return {
    status: "caution",
    says: `The flap's edge is ${w.length(edge)} above the floor and clears the back of ${listed(names)}: it is not carried and counts as let go closed, so the hold is right only if nothing else swings it`,
    advice: "check the sill's and the shoulder's height",
  };
}

function comfort(computed: Computed, w: Words): Verdict {
  const { animal } = computed.crossings[computed.hardestPush];
  const { force, limit, energy } = computed.pushes[computed.hardestPush];
  const at = w.length(animal.pushHeight);
  if (force === null || energy === null) {
    return {
      status: "fail",
      says: `${animal.name} pushes at ${at}, not below the hinge at ${w.length(computed.hingeHeight)}: no force opens the flap, against ${w.force(limit)} it is content with`,
      advice: "hang the flap higher",
    };
  }
  const [needs, content] = w.pair(force, limit, "force");
  const status = againstLimit(force, limit);
  if (status === "ok") {
    return {
      status,
      says: `${animal.name} opens the flap with ${needs} at ${at}, at ease up to ${content}; walking, it adds ${w.energy(energy)}`,
    };
  }
  const verb = status === "fail" ? "more than" : "close to";
  return {
    status,
    says: `${animal.name} must push with ${needs} at ${at}, ${verb} the ${content} it is content with`,
    advice: "make the flap lighter or the magnets weaker",
  };
}

const PUSH = ["push.force", "push.limit", "push.energy"] as const;

export const FIT_RULES: readonly Rule[] = [
  {
    id: "fit.height",
    part: "opening",
    concern: "height of the opening",
    results: ["fit.heightSpare"],
    judge: height,
    remedies: ["opening height"],
  },
  {
    id: "fit.width",
    part: "opening",
    concern: "width of the opening",
    results: ["fit.widthSpare"],
    judge: width,
    remedies: ["opening width"],
  },
  {
    id: "fit.step",
    part: "opening",
    concern: "step over the sill",
    results: ["fit.stepSpare"],
    judge: step,
    remedies: ["sill height"],
  },
  {
    id: "passage.hinge-height",
    part: "opening",
    concern: "hinge above push and shoulder",
    results: ["passage.letGoTime"],
    judge: hingeHeight,
    remedies: ["hinge height"],
  },
  {
    id: "passage.stop-angle",
    part: "hinge",
    concern: "stop beyond the let-go angle",
    results: ["swing.releaseAngle"],
    judge: stopAngle,
    remedies: ["stop angle", "hinge height"],
  },
  {
    id: "passage.lifts-flap",
    part: "animals",
    concern: "the back lifts the flap",
    results: ["swing.releaseAngle", "passage.passTime", "passage.letGoTime"],
    judge: lifts,
  },
  {
    id: "push.comfort",
    part: "flap",
    concern: "push within comfort",
    results: PUSH,
    judge: comfort,
    remedies: ["wider gap", "thinner flap", "hinge height"],
  },
];
