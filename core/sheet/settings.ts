/** What is set by hand once the parts are together, and how. */
import { timerParts } from "../review/suggest-timer.ts";
import { holdToSet, type SheetInput } from "./sheet-input.ts";

export interface Setting {
  readonly name: string;
  readonly value: string;
  readonly how: string;
}

/** In the order one sets them: geometry, latch, timer. */
export function settings(input: SheetInput): Setting[] {
  return [...geometry(input), ...latch(input), ...hold(input)];
}

function geometry({ plan, sizes, door }: SheetInput): Setting[] {
  const { opening, flap } = plan;
  const rows: Setting[] = [
    {
      name: "hinge axis",
      value: `${sizes.long(opening.sill)} above the sill`,
      how: `then ${sizes.long(opening.sill - flap.bottom)} are left below the flap and ${sizes.long(opening.half - flap.half)} at each side`,
    },
  ];
  if (door.magnets !== null) {
    rows.push({
      name: "magnet gap",
      value: sizes.long(door.magnets.gap * 1000),
      how: "between facing magnets, flap closed; shims under a magnet set it. Mark the poles before gluing",
    });
  }
  return rows;
}

function latch({ plan, sizes, door, words: w }: SheetInput): Setting[] {
  const { bolt, strike } = plan;
  if (bolt === null || strike === null || door.latch === null) return [];
  const out = Math.abs(bolt.extended - bolt.mouth);
  const rows: Setting[] = [
    {
      name: "tip gap",
      value: sizes.long(Math.abs(bolt.withdrawn - bolt.mouth)),
      how: "from the bolt's tip, drawn back, to the slot's mouth: move the solenoid in its bracket",
    },
    {
      name: "bolt in its slot",
      value: sizes.long(out),
      how: `with the bolt out; it holds from ${sizes.long(Math.abs(bolt.engaged - bolt.mouth))} on`,
    },
    {
      name: "play of bolt in slot",
      value: `${sizes.long((strike.slotWidth - bolt.width) / 2)} each way`,
      how: "file the slot, not the bolt; break its edges",
    },
    {
      name: "bolt spring",
      value: w.force(door.latch.springForce),
      how: "at half stroke, with a spring scale",
    },
  ];
  if (Math.abs(bolt.z + strike.z) > 0.005) {
    const z = bolt.z + strike.z;
    rows.push({
      name: "slot beside the flap's plane",
      value: sizes.long(Math.abs(z)),
      how: `towards ${z > 0 ? "outdoors" : "indoors"}`,
    });
  }
  return rows;
}

function hold(input: SheetInput): Setting[] {
  const { computed, words: w, study, door } = input;
  if (door.timer === null || computed.timer === null) return [];
  const set = holdToSet(input);
  if (set === null) {
    return [
      {
        name: "hold",
        value: "none is sure",
        how: study?.whyNone ?? "see the findings: the flap may rest where the bolt does not find its slot",
      },
    ];
  }
  const how =
    set.grounds === "study"
      ? `the study's recommendation: ${percentOf(input)}`
      : `a first setting, no reliability claimed; ${study?.whyNone ?? "the tolerance study recommends one"}`;
  const rows: Setting[] = [{ name: "hold", value: w.time(set.time), how }];
  if (Math.abs(set.time - computed.timer.nominal) > 1e-9) {
    rows.push({
      name: "hold now in the file",
      value: w.time(computed.timer.nominal),
      how: `with this timer ${w.time(computed.timer.shortest)} to ${w.time(computed.timer.longest)}`,
    });
  }
  const made = timerParts(computed, set.time);
  if (made !== null) {
    rows.push({
      name: "trimmer of a one-shot",
      value: `${w.resistance(made.parts.trimmerSetting)} of ${w.resistance(made.parts.trimmer)}`,
      how: `then turn it until a stopwatch shows ${w.time(set.time)}`,
    });
  }
  return rows;
}

function percentOf({ study, words: w }: SheetInput): string {
  if (study === null || study.probability === null || study.lowerBound === null) return "";
  return `${w.of(study.probability, "ratio", 5)} caught in ${study.samples} sampled doors, at least ${w.of(study.lowerBound, "ratio", 5)} with 95 % confidence`;
}
