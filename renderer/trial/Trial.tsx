/** The built door on the bench: what was counted, timed, weighed or filmed, beside what to expect, and what it tells of the door. */
import "./trial.css";
import { type KeyboardEvent, type ReactNode, useEffect } from "react";
import { Button, FileTrigger } from "react-aria-components";
import { useStore } from "zustand";
import { textOfFile } from "../bridge/pickers.ts";
import { usePage, useWorkbench } from "../shell/workbench.ts";
import { textOf } from "../state/page-store.ts";
import type { TrialField } from "../state/trial-readings.ts";
import { isNothing } from "../state/trial-record.ts";
import type { Trials } from "../state/trials.ts";
import { Icon } from "../ui/icons.tsx";
import type { Expected } from "../worker/fit-messages.ts";
import { Found } from "./Found.tsx";
import { Row } from "./Row.tsx";

interface Group {
  readonly title: string;
  readonly how: string | null;
  readonly fields: readonly TrialField[];
}

const GROUPS: readonly Group[] = [
  {
    title: "The swing",
    how: "Draw the bolt back by hand, hold the flap out, let go without a push. Write what you see; leave out what you did not measure.",
    fields: ["letGo", "passes", "settle", "still", "rest"],
  },
  { title: "The push", how: null, fields: ["push"] },
  { title: "Bolt and coil", how: null, fields: ["lowEnd", "pullIn", "room", "coil"] },
  { title: "The hold", how: null, fields: ["hold"] },
];

export function Trial(): ReactNode {
  const { trials } = useWorkbench();
  const text = usePage(textOf);
  const { expected, running } = useStore(trials.store);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another text is another door.
  useEffect(() => trials.follow(), [trials, text]);
  useEffect(() => trials.leave, [trials]);
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: keys that come up from the readings
    <div className="trial" onKeyDown={(event) => stepByKey(event, trials)}>
      {GROUPS.map((group) => (
        <Rows key={group.title} group={group} expected={expected} />
      ))}
      <MeasuredSwing />
      <Kept />
      <div aria-live="polite" aria-busy={running}>
        <Found />
      </div>
    </div>
  );
}

function Rows({ group, expected }: { group: Group; expected: Expected | null }): ReactNode {
  const fields = group.fields.filter((field) => isMeasurable(field, expected));
  if (fields.length === 0) return null;
  return (
    <section className="group" aria-label={`Measured: ${group.title.toLowerCase()}`}>
      <h3>{group.title}</h3>
      {group.how !== null && <p className="trial-how">{group.how}</p>}
      {fields.map((field) => (
        <Row key={field} field={field} />
      ))}
    </section>
  );
}

/** What the door has nothing of cannot be measured on it. */
const NEEDS: Readonly<Partial<Record<TrialField, keyof Expected>>> = {
  settle: "capture",
  push: "push",
  lowEnd: "pull",
  pullIn: "pull",
  room: "coil",
  coil: "coil",
  hold: "hold",
};

function isMeasurable(field: TrialField, expected: Expected | null): boolean {
  const need = NEEDS[field];
  return expected === null || need === undefined || expected[need] !== null;
}

/** In a reading, undo and redo are of the readings: the door's own steps are not touched from here. */
function stepByKey(event: KeyboardEvent, trials: Trials): void {
  const { key, shiftKey, ctrlKey, metaKey, target } = event;
  if (!(ctrlKey || metaKey) || !(target instanceof HTMLElement) || target.dataset.trial === undefined) return;
  const low = key.toLowerCase();
  const redo = low === "y" || (low === "z" && shiftKey);
  if (!redo && low !== "z") return;
  event.preventDefault();
  if (redo) trials.redo();
  else trials.undo();
}

/** That the readings are kept, and the ways back. */
function Kept(): ReactNode {
  const { trials } = useWorkbench();
  const { history, texts, file, trouble } = useStore(trials.store);
  const undo = history.done[history.done.length - 1]?.name;
  const redo = history.undone[history.undone.length - 1]?.name;
  const empty = isNothing({ texts, file });
  if (empty && undo === undefined && redo === undefined && trouble === "") return null;
  return (
    <section className="trial-kept" aria-label="Readings kept">
      {trouble === "" ? (
        <p className="trial-how">
          Kept for this door: the readings are here again when it is opened the next time.
        </p>
      ) : (
        <p className="trial-untold" role="alert">
          <Icon name="caution" /> {trouble}
        </p>
      )}
      <div className="trial-file">
        <Button
          className="button button-icon button-quiet"
          aria-label={undo === undefined ? "Undo a reading" : `Undo the reading: ${undo}`}
          isDisabled={undo === undefined}
          onPress={trials.undo}
        >
          <Icon name="undo" />
        </Button>
        <Button
          className="button button-icon button-quiet"
          aria-label={redo === undefined ? "Redo a reading" : `Redo the reading: ${redo}`}
          isDisabled={redo === undefined}
          onPress={trials.redo}
        >
          <Icon name="redo" />
        </Button>
        <Button className="button button-small" isDisabled={empty} onPress={trials.clear}>
          Clear all readings
        </Button>
      </div>
    </section>
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
