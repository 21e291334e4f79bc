/** The built door on the bench: what was counted, timed, weighed or filmed, beside what to expect, and what it tells of the door. */
import "./trial.css";
import { type ReactNode, useEffect, useId } from "react";
import { Button, FileTrigger } from "react-aria-components";
import { useStore } from "zustand";
import { textOfFile } from "../bridge/pickers.ts";
import { figureText } from "../figures/format.ts";
import { usePage, useSettings, useWorkbench } from "../shell/workbench.ts";
import { textOf } from "../state/page-store.ts";
import { TRIAL_FIELDS, type TrialField } from "../state/trial-readings.ts";
import { Icon } from "../ui/icons.tsx";
import type { Expected } from "../worker/fit-messages.ts";
import { expectation, isOutside } from "./expectations.ts";
import { Found } from "./Found.tsx";

export function Trial(): ReactNode {
  const { trials } = useWorkbench();
  const text = usePage(textOf);
  const { expected, running } = useStore(trials.store);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another text is another door.
  useEffect(() => trials.follow(), [trials, text]);
  useEffect(() => trials.cancel, [trials]);
  return (
    <div className="trial">
      <section className="group" aria-label="Measured on the bench">
        <p className="trial-how">
          Draw the bolt back by hand, hold the flap out, let go without a push. Write what you see; leave out
          what you did not measure.
        </p>
        {TRIAL_FIELDS.filter((field) => isMeasurable(field, expected)).map((field) => (
          <Row key={field} field={field} />
        ))}
      </section>
      <MeasuredSwing />
      <div aria-live="polite" aria-busy={running}>
        <Found />
      </div>
    </div>
  );
}

function isMeasurable(field: TrialField, expected: Expected | null): boolean {
  if (expected === null) return true;
  if (field === "settle") return expected.capture !== null;
  if (field === "push") return expected.push !== null;
  return field !== "hold" || expected.hold !== null;
}

const LABELS: Readonly<Record<TrialField, string>> = {
  letGo: "Let go at",
  passes: "Passes through the middle",
  settle: "Until it stays in the bolt’s play",
  still: "Until it is still",
  rest: "Stops off the middle by",
  push: "Push on a scale",
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
  hold: "seconds",
};

function Row({ field }: { field: TrialField }): ReactNode {
  const { trials } = useWorkbench();
  const { texts, readings, expected, limits } = useStore(trials.store);
  const units = useSettings((state) => state.units);
  const id = useId();
  const fault = readings.faults[field];
  const value = readings.values[field];
  const due = expected === null ? null : expectation(field, expected, limits, units);
  const outside = due !== null && value !== undefined && isOutside(due, value);
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
        onChange={({ target }) => trials.write(field, target.value)}
      />
      <p id={`${id}-due`} className="trial-due" data-outside={outside || undefined}>
        {outside && (
          <>
            <Icon name="caution" /> Outside what to expect.{" "}
          </>
        )}
        {due !== null &&
          `${due.how ?? ""}${outside ? "" : due.how === undefined ? "Expect " : " expect "}${due.says}.`}
      </p>
      {fault !== undefined && (
        <p id={`${id}-fault`} className="entry-fault" role="alert">
          {fault}
        </p>
      )}
    </div>
  );
}

/** A swing as a camera or a sensor saw it. */
function MeasuredSwing(): ReactNode {
  const { trials, ui } = useWorkbench();
  const { file, reasons } = useStore(trials.store);
  const faulty = usePage((state) => state.faults.length > 0);
  const take = (files: FileList | null): void => {
    const chosen = files?.[0];
    if (chosen === undefined) return;
    textOfFile(chosen).then(
      (text) => trials.load({ name: chosen.name, text }),
      (error: Error) =>
        ui.setState({
          dialog: { kind: "notice", title: `${chosen.name} could not be opened`, reasons: [error.message] },
        }),
    );
  };
  return (
    <section className="group" aria-label="A measured swing">
      <h3>Or a swing that was filmed</h3>
      <p className="trial-how">
        A table of time and angle, or of turning points, tells friction, damping and air apart. Drop it
        anywhere on the window, or choose it here.
      </p>
      <div className="trial-file">
        <FileTrigger acceptedFileTypes={[".csv", ".tsv", ".txt"]} onSelect={take}>
          <Button className="button">{file === null ? "Choose a table…" : "Choose another…"}</Button>
        </FileTrigger>
        {file !== null && (
          <>
            <span className="trial-file-name">{file.name}</span>
            <Button
              className="button button-icon button-quiet"
              aria-label={`Put ${file.name} aside`}
              onPress={() => trials.load(null)}
            >
              <Icon name="minus" />
            </Button>
          </>
        )}
      </div>
      {faulty ? (
        <p className="trial-untold">
          <Icon name="caution" /> An entry of the door is wrong: this is of the door as it was before.
        </p>
      ) : (
        reasons.length > 0 && (
          <div className="trial-reasons" role="alert">
            {reasons.map((reason) => (
              <p key={reason} className="entry-fault">
                {reason}
              </p>
            ))}
          </div>
        )
      )}
    </section>
  );
}
