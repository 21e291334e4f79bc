/** One reading: where it is written, what to expect, and what it means outside of that. */
import { type ReactNode, useId } from "react";
import { useStore } from "zustand";
import { figureText } from "../figures/format.ts";
import { useSettings, useWorkbench } from "../shell/workbench.ts";
import type { TrialField } from "../state/trial-readings.ts";
import { Icon } from "../ui/icons.tsx";
import { type Expectation, expectation, sideOf } from "./expectations.ts";
import { meaning } from "./meanings.ts";
import { unbroken } from "./unbroken.ts";

export const LABELS: Readonly<Record<TrialField, string>> = {
  letGo: "Let go at",
  passes: "Passes through the middle",
  settle: "Until it stays in the bolt’s play",
  still: "Until it is still",
  rest: "Stops off the middle by",
  push: "Push on a scale",
  lowEnd: "Drawn back at the low end",
  pullIn: "Drawn back from",
  room: "Room temperature",
  coil: "Coil after ten minutes",
  hold: "Hold by stopwatch",
};

/** How one writes it, shown in an empty place. */
const FORMS: Readonly<Record<TrialField, string>> = {
  letGo: "60°",
  passes: "a count",
  settle: "seconds",
  still: "seconds",
  rest: "mm or degrees",
  push: "g, oz or N",
  lowEnd: "of ten",
  pullIn: "volts",
  room: "°C or °F",
  coil: "°C or °F",
  hold: "seconds",
};

export function Row({ field }: { field: TrialField }): ReactNode {
  const { trials } = useWorkbench();
  const { texts, readings, expected, limits } = useStore(trials.store);
  const units = useSettings((state) => state.units);
  const id = useId();
  const fault = readings.faults[field];
  const value = readings.values[field];
  const due = expected === null ? null : expectation(field, expected, limits, units);
  const side = due === null || value === undefined ? null : sideOf(due, value);
  const means =
    side === null || value === undefined || expected === null ? "" : meaning(field, side, value, expected);
  const form =
    field === "letGo" && expected !== null ? figureText(expected.letGo, "rad", units) : FORMS[field];
  return (
    <div className="entry trial-row" data-wrong={fault !== undefined || undefined}>
      <label htmlFor={id} className="entry-label">
        {LABELS[field]}
      </label>
      <input
        id={id}
        className="entry-input"
        data-trial={field}
        type="text"
        autoComplete="off"
        spellCheck={false}
        value={texts[field]}
        placeholder={form}
        aria-invalid={fault !== undefined}
        aria-describedby={`${id}-due${fault === undefined ? "" : ` ${id}-fault`}`}
        onChange={({ target }) => trials.write(field, target.value, LABELS[field])}
        onBlur={trials.endGesture}
      />
      <p id={`${id}-due`} className="trial-due">
        {side !== null && (
          <strong className="trial-outside">
            <Icon name="caution" /> Outside what to expect. {means}
          </strong>
        )}
        {due !== null && unbroken(wordsOf(due))}
      </p>
      {fault !== undefined && (
        <p id={`${id}-fault`} className="entry-fault" role="alert">
          {fault}
        </p>
      )}
    </div>
  );
}

function wordsOf({ how, says, plain }: Expectation): string {
  if (plain === true) return `${says}.`;
  return how === undefined ? `Expect ${says}.` : `${how} expect ${says}.`;
}
