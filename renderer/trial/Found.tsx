/** What the trial tells of the door: values with their errors, what stays untold and what to measure instead, and the way in. */
import { type ReactNode, useState } from "react";
import { Button } from "react-aria-components";
import { useStore } from "zustand";
import type { DoorFile } from "../../core/door/file.ts";
import { writeDoor } from "../../core/door/file.ts";
import { fieldAt, isNumeric } from "../../core/door/schema.ts";
import type { FitDone, FittedValue } from "../../core/study/fit/fit-types.ts";
import { fitEdits, withFitEdits } from "../../core/study/fit/write-back.ts";
import { keyText } from "../figures/format.ts";
import { labelInSentence } from "../parts/labels.ts";
import { usePage, useSettings, useWorkbench } from "../shell/workbench.ts";
import { replaceFile } from "../state/command.ts";
import { changeEntries, type EntryChange } from "../state/entries.ts";
import { textOf } from "../state/page-store.ts";
import { measuredCoil } from "../state/trial-coil.ts";
import { measuredHold } from "../state/trial-hold.ts";
import { Icon } from "../ui/icons.tsx";
import type { ExpectedCoil } from "../worker/fit-messages.ts";
import { ComparedSwing } from "./ComparedSwing.tsx";
import { inUnits } from "./fit-words.ts";

/** Doors tried, as the study offers first. */
const SAMPLES = 20_000;

export function Found(): ReactNode {
  const { trials } = useWorkbench();
  const { found, running, file, readings, placed } = useStore(trials.store);
  const units = useSettings((state) => state.units);
  const text = usePage(textOf);
  const counted = Object.keys(readings.values).some((field) => field !== "letGo" && field !== "room");
  if (found === null && !running && !counted) return null;
  const older = found !== null && text !== found.text && text !== placed;
  return (
    <section className="trial-found" data-older={older || undefined}>
      <h3>What it tells</h3>
      {running && (
        <p className="trial-running">
          <span>Computing…</span>
          <Button className="button button-small" onPress={trials.cancel}>
            Cancel
          </Button>
        </p>
      )}
      {found !== null && !found.fit.ok && (
        <p className="finding finding-caution">
          <Icon name="caution" /> {inUnits(found.fit.says, units)}
        </p>
      )}
      {found?.fit.ok === true && <Told fit={found.fit} gaps={found.gaps} />}
      {found === null && !running && file === null && (
        <p className="trial-how">
          This is set against what to expect above. To learn the friction from it, take the time until the
          flap is still as well, or load a filmed swing.
        </p>
      )}
      <Placing fit={found?.fit.ok === true ? toldOnly(found.fit) : null} older={older || running} />
    </section>
  );
}

/** Without the values that came out without a finite error: those are no news. */
function toldOnly(fit: FitDone): FitDone {
  return { ...fit, values: fit.values.filter(isTold) };
}

const isTold = ({ value, error, high }: FittedValue): boolean =>
  Number.isFinite(value) && Number.isFinite(error) && Number.isFinite(high);

function Told({ fit, gaps }: { fit: FitDone; gaps: number }): ReactNode {
  const units = useSettings((state) => state.units);
  const untold = fit.values.filter((value) => !isTold(value));
  const sentences = fit.says.slice(fit.values.length + (fit.kind === "count" ? 0 : fit.refused.length));
  return (
    <>
      <ul className="trial-values">
        {fit.values.filter(isTold).map((value) => (
          <Value key={value.key} fitted={value} />
        ))}
      </ul>
      {untold.map(({ key }) => (
        <p key={key} className="trial-untold">
          <Icon name="caution" /> This does not tell the {labelInSentence(key)}: any value would show the
          same.
        </p>
      ))}
      {fit.compared !== null && (
        <ComparedSwing compared={fit.compared} timed={fit.kind === "trace"} residual={fit.residual} />
      )}
      {sentences.map((sentence) => (
        <p key={sentence} className="trial-how">
          {inUnits(sentence, units)}
        </p>
      ))}
      {gaps > 0 && <p className="trial-how">{gaps} lines without an angle were passed over.</p>}
      {fit.refused.length > 0 && <Refused fit={fit} />}
    </>
  );
}

function Value({ fitted }: { fitted: FittedValue }): ReactNode {
  const units = useSettings((state) => state.units);
  const { key, value, error, low, high, before, atLimit } = fitted;
  const write = (si: number, digits = 3): string => written(key, si, units, digits);
  const label = labelInSentence(key);
  const doubtful = !atLimit && error > Math.abs(value) / 2;
  return (
    <li className="trial-value">
      <span className="trial-value-name">{label.charAt(0).toUpperCase() + label.slice(1)}</span>
      <strong>{atLimit ? "none seen" : `${write(value)} ± ${write(error, 2)}`}</strong>
      <span className="trial-value-more">
        {atLimit ? `at most ${write(high)}` : `${write(low)} to ${write(high)}`} with 95 % confidence; in the
        file {write(before)}.{doubtful && " Hardly told: the error is more than half of it."}
      </span>
    </li>
  );
}

function written(key: string, si: number, units: "metric" | "inch", digits: number): string {
  const field = fieldAt(key);
  return keyText(si, isNumeric(field) && field.kind === "quantity" ? field.dimension : null, units, digits);
}

function Refused({ fit }: { fit: FitDone }): ReactNode {
  const units = useSettings((state) => state.units);
  const advice = new Set(fit.refused.map(({ instead }) => instead));
  return (
    <details className="more" open={fit.kind !== "count"}>
      <summary>
        {fit.refused.length === 1 ? "One value it" : `${fit.refused.length} values it`} cannot tell
      </summary>
      {fit.refused.map(({ key, says }) => (
        <p key={key} className="trial-untold">
          <Icon name="caution" /> {inUnits(says, units)}
        </p>
      ))}
      <p className="trial-how">To learn more:</p>
      <ul className="trial-advice">
        {[...advice].map((words) => (
          <li key={words}>{words}</li>
        ))}
      </ul>
    </details>
  );
}

interface PlacingProps {
  readonly fit: FitDone | null;
  /** What was found is not of the door at hand. */
  readonly older: boolean;
}

function Placing({ fit, older }: PlacingProps): ReactNode {
  const { page, trials, studies, ui } = useWorkbench();
  const { placed, readings, expected } = useStore(trials.store);
  const text = usePage(textOf);
  const timer = usePage((state) => state.view?.door.timer ?? null);
  const [tolerances, setTolerances] = useState(false);
  const nominal = expected?.hold?.nominal;
  const measured = readings.values.hold;
  const hold =
    timer === null || nominal === undefined || measured === undefined
      ? []
      : measuredHold(timer, nominal, measured);
  const coil = coilChanges(expected?.coil ?? null, readings.values.coil);
  const swing = fit !== null && fit.values.length > 0;
  const place = (): void => {
    page.actions.change((file) => {
      const after = withMeasured(file, fit, tolerances, [...hold, ...coil]);
      trials.place(writeDoor(after));
      const parts = [swing && "swing", hold.length > 0 && "hold", coil.length > 0 && "coil"];
      return replaceFile(nameOf(parts.filter((part) => part !== false)), file, after);
    });
  };
  if (placed !== null && placed === text) {
    return (
      <div className="trial-placing">
        <p className="all-good">
          <Icon name="ok" /> In the door now: its verdict is that of the door as measured. Undo takes it back.
        </p>
        <Button
          className="button"
          onPress={() => {
            ui.setState({ stage: "study" });
            studies.run(SAMPLES);
          }}
        >
          Run the study with it
        </Button>
      </div>
    );
  }
  if (!swing && hold.length + coil.length === 0) return null;
  return (
    <div className="trial-placing">
      {swing && (
        <label className="trial-check">
          <input
            type="checkbox"
            checked={tolerances}
            onChange={({ target }) => setTolerances(target.checked)}
          />{" "}
          Its errors too, in place of the usual spreads
        </label>
      )}
      {hold.length > 0 && (
        <p className="trial-how">
          With the hold as timed
          {hold.length > 1
            ? `: the capacitor would be ${String(hold[1].entry)} (assumed to be what strays)`
            : ""}
          .
        </p>
      )}
      {coil.length > 0 && expected?.coil != null && (
        <p className="trial-how">
          With the coil’s heat as measured: {String(coil[0].entry)} to its surroundings, in the file{" "}
          {keyText(expected.coil.thermalResistance, "thermalResistance", "metric", 3)}; its time constant as
          in the file.
        </p>
      )}
      <Button className="button button-main" isDisabled={older} onPress={place}>
        Put into the door
      </Button>
    </div>
  );
}

function withMeasured(
  file: DoorFile,
  fit: FitDone | null,
  tolerances: boolean,
  others: readonly EntryChange[],
): DoorFile {
  const fitted = fit === null ? file : withFitEdits(file, fitEdits(fit, file, { tolerances }));
  return changeEntries("", fitted, others).apply(fitted);
}

function coilChanges(coil: ExpectedCoil | null, measured: number | undefined): readonly EntryChange[] {
  if (coil === null || measured === undefined) return [];
  return measuredCoil({ hot: coil.hot, measured, resistance: coil.measuredResistance });
}

function nameOf(parts: readonly string[]): string {
  const words =
    parts.length < 3 ? parts.join(" and ") : `${parts.slice(0, -1).join(", ")} and ${parts.at(-1)}`;
  return `Put the measured ${words} into the door`;
}
