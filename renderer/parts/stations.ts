/** The parts of a door in the order in which a passage meets them: what each asks for and which figures it decides. */
import type { PartName } from "../../core/review/finding.ts";
import { TOLERANCES } from "../state/spread-text.ts";

export type StationId =
  | "verdict"
  | "animals"
  | "opening"
  | "flap"
  | "hinge"
  | "air"
  | "magnets"
  | "latch"
  | "solenoid"
  | "timer"
  | "supply"
  | "detection"
  | "trial";

/** Inputs of one section of the door file, those seldom needed folded away. */
export interface Group {
  readonly section: string;
  readonly title: string;
  /** May be left out of the file altogether. */
  readonly optional: boolean;
  readonly keys: readonly string[];
  readonly more: readonly string[];
}

export interface Station {
  readonly id: StationId;
  readonly title: string;
  /** On the rail, where the title is too long. */
  readonly short?: string;
  readonly says: string;
  /** Parts whose findings belong here. */
  readonly parts: readonly PartName[];
  readonly groups: readonly Group[];
  /** Names of results. */
  readonly figures: readonly string[];
}

const words = (text: string): string[] => text.split(" ").filter((word) => word !== "");

function group(section: string, title: string, keys: string, more = "", optional = false): Group {
  return { section, title, optional, keys: words(keys), more: words(more) };
}

export const STATIONS: readonly Station[] = [
  {
    id: "verdict",
    title: "Verdict",
    says: "What the computation finds, worst first.",
    parts: [],
    groups: [],
    figures: [],
  },
  {
    id: "animals",
    title: "Animals",
    says: "Who goes through. The one that needs the longest hold sets the passage.",
    parts: ["animals"],
    groups: [group("animals", "Animals", "")],
    figures: words("push.force push.limit push.energy passage.passTime"),
  },
  {
    id: "opening",
    title: "Opening",
    says: "The hole the animal steps through.",
    parts: ["opening"],
    groups: [group("opening", "Opening", "width height sillHeight outOfPlumb", "heightMargin widthMargin")],
    figures: words("fit.heightSpare fit.widthSpare fit.stepSpare"),
  },
  {
    id: "flap",
    title: "Flap",
    says: "The plate that swings from its top edge, and what is fixed to it.",
    parts: ["flap"],
    groups: [
      group(
        "flap",
        "Flap",
        "width height thickness material hingeOffset extraMasses",
        "density bottomClearance",
      ),
    ],
    figures: words("flap.mass flap.inertia flap.smallAnglePeriod swing.releaseAngle"),
  },
  {
    id: "hinge",
    title: "Hinge and seal",
    short: "Hinge, seal",
    says: "What takes the swing’s energy out.",
    parts: ["hinge"],
    groups: [
      group("hinge", "Hinge", "frictionTorque viscousDamping stopAngle", "staticRatio stopRestitution"),
      group("seal", "Seal", "frictionTorque contactAngle"),
      group("damper", "Damper", "coefficient withinAngle"),
    ],
    figures: words("swing.settleTime swing.restTime swing.restAngle swing.deadBand swing.centrePasses"),
  },
  {
    id: "air",
    title: "Wind and air",
    short: "Air",
    says: "The air the flap moves in, and what blows against it.",
    parts: [],
    groups: [group("air", "Air", "windSpeed pressureDifference", "density dragCoefficient swingFactor")],
    figures: words("wind.gustSpeed energy.air"),
  },
  {
    id: "magnets",
    title: "Magnets",
    says: "They pull the flap to the centre. They take no energy out, but shrink the dead band.",
    parts: ["magnets"],
    groups: [
      group(
        "magnets",
        "Magnets",
        "arrangement gap diameter thickness remanence distanceFromHinge sides perSide",
        "pitch polarity force temperature",
        true,
      ),
    ],
    figures: words(
      "magnets.peakTorque magnets.peakAngle swing.deadBand push.force magnets.axialForce magnets.fluxIndex",
    ),
  },
  {
    id: "latch",
    title: "Latch",
    says: "The bolt, its slot, and how far off centre it still finds it.",
    parts: ["latch"],
    groups: [
      group(
        "latch",
        "Latch",
        "boltWidth slotWidth distanceFromHinge tipGap engagement edgeHalfWidth boltMass springForce",
        "frictionCoefficient guideFactor sideLoad offset boltPoints",
        true,
      ),
    ],
    figures: words("latch.captureAngle latch.blockAngle latch.boltRiseTime"),
  },
  {
    id: "solenoid",
    title: "Coil and driver",
    short: "Coil",
    says: "The solenoid that withdraws the bolt, and the transistor that switches it.",
    parts: ["solenoid", "driver"],
    groups: [
      group(
        "solenoid",
        "Solenoid",
        "ratedVoltage ratedCurrent inductance stroke pull thermalResistance thermalTimeConstant",
        "insulationClass ambient",
        true,
      ),
      group(
        "driver",
        "Driver",
        "kind clamp clampVoltage dropVoltage onResistance",
        "currentGain driveVoltage baseEmitterVoltage baseResistor",
        true,
      ),
    ],
    figures: words(
      "solenoid.pullInVoltage solenoid.current solenoid.pullInTime solenoid.releaseTime solenoid.sideLoadLimit solenoid.holdTemperature solenoid.continuousTemperature driver.dissipation",
    ),
  },
  {
    id: "timer",
    title: "Timer",
    says: "How long the door stays unlocked after the last pulse. Drag the hold on the strip below, or write it here.",
    parts: ["timer"],
    groups: [
      group(
        "timer",
        "Timer",
        "holdTime retriggers resistor capacitor",
        "resistorTolerance capacitorTolerance",
        true,
      ),
    ],
    figures: words("timer.nominal timer.shortest timer.longest hold.required hold.setting"),
  },
  {
    id: "supply",
    title: "Supply",
    says: "Where the current comes from.",
    parts: ["supply"],
    groups: [
      group(
        "supply",
        "Supply",
        "voltage currentLimit regulator",
        "logicVoltage logicCurrent efficiency thermalResistance ambient",
        true,
      ),
    ],
    figures: words("supply.current regulator.dissipation regulator.temperature"),
  },
  {
    id: "detection",
    title: "Detection",
    says: "How the animal is noticed.",
    parts: ["detection"],
    groups: [group("detection", "Detection", "range farSideRange pulseInterval")],
    figures: words("passage.arrivalTime passage.letGoTime"),
  },
  {
    id: "trial",
    title: "Trial and aims",
    short: "Trial",
    says: "What the built door shows on the bench, and what the hold is to reach.",
    parts: [],
    groups: [group("release", "Let-go by hand", "angle speed"), group("study", "Aims", "margin reliability")],
    figures: words("swing.releaseAngle hold.required"),
  },
];

/** The station a part's findings lead to. */
export function stationOfPart(part: PartName): StationId {
  return STATIONS.find(({ parts }) => parts.includes(part))?.id ?? "verdict";
}

/** The station that holds a key of the file; undefined where none does: tolerances stand with the study. */
export function stationOfPath(path: string): StationId | undefined {
  if (path.startsWith(TOLERANCES)) return undefined;
  const section = path.split(".")[0];
  return STATIONS.find(({ groups }) => groups.some((g) => g.section === section))?.id;
}
