/** The figures a map can show, in groups and in plain words: every result of the door, and those with the tolerances in. */
import { RESULTS } from "../../core/review/results.ts";
import { SAMPLED_FIGURES, type SampledKey } from "../../core/study/sampled-names.ts";
import { resultScale, type Scale } from "../figures/scale.ts";
import type { UnitSystem } from "../state/view.ts";

export interface FigureChoice {
  readonly name: string;
  readonly title: string;
}

export interface FigureGroup {
  readonly title: string;
  readonly figures: readonly FigureChoice[];
}

interface SampledWords {
  readonly title: string;
  /** What it means that there is none. */
  readonly absent: string;
}

const SAMPLED: Readonly<Record<SampledKey, SampledWords>> = {
  "sampled.settle50": { title: "half of all passages are settled within", absent: "never" },
  "sampled.settle95": { title: "95 % of all passages are settled within", absent: "never" },
  "sampled.hold95": { title: "hold from which on 95 % of passages are caught", absent: "no hold does it" },
  "sampled.caught": { title: "share of passages caught at the hold that is set", absent: "no timer" },
  "sampled.restsOutside": {
    title: "share of passages that end at rest outside the slot",
    absent: "does not exist",
  },
};

export const isSampled = (name: string): name is SampledKey => Object.hasOwn(SAMPLED, name);

/** Groups of results by how their names begin. */
const GROUPS: readonly (readonly [title: string, ...sections: string[]])[] = [
  ["Hold and passage", "hold", "passage", "timer"],
  ["Swing", "swing"],
  ["Latch", "latch"],
  ["Magnets", "magnets"],
  ["Push and wind", "push", "wind"],
  ["Room for the animal", "fit"],
  ["Flap", "flap"],
  ["Where the energy goes", "energy"],
  ["Coil and electronics", "solenoid", "driver", "supply", "regulator"],
];

const sectionOf = (name: string): string => name.slice(0, name.indexOf("."));

function resultsOf(sections: readonly string[]): FigureChoice[] {
  return RESULTS.filter(({ name }) => sections.includes(sectionOf(name))).map(({ name, title }) => ({
    name,
    title,
  }));
}

const WITH_TOLERANCES: FigureGroup = {
  title: "Tolerances in (takes longer)",
  figures: SAMPLED_FIGURES.map(({ name }) => ({ name, title: SAMPLED[name].title })),
};

const [FIRST, ...OTHERS] = GROUPS.map(([title, ...sections]) => ({ title, figures: resultsOf(sections) }));

export const FIGURE_GROUPS: readonly FigureGroup[] = [FIRST, WITH_TOLERANCES, ...OTHERS];

/** What a figure is called on the page; `fallback` for what is no figure of these. */
export function figureTitle(name: string, fallback: string): string {
  for (const { figures } of FIGURE_GROUPS) {
    const found = figures.find((figure) => figure.name === name);
    if (found !== undefined) return found.title;
  }
  return fallback;
}

/** What it means where a figure has no value. */
export function absentWords(name: string): string {
  return isSampled(name) ? SAMPLED[name].absent : "does not exist";
}

/** One unit for a whole map; shares of passages in per cent. */
export function figureScale(name: string, unit: string, sample: number, units: UnitSystem): Scale {
  if (isSampled(name) && unit === "1") return { unit: "%", of: (share) => 100 * share };
  return resultScale(unit, sample, units);
}
