/** The tolerance study: how sure is a hold, over all the doors that could come of this drawing. */
import { type ReactNode, useState } from "react";
import { Button, ProgressBar } from "react-aria-components";
import { useStore } from "zustand";
import { causeList, percent, seconds } from "../../core/study/study-words.ts";
import { labelInSentence } from "../parts/labels.ts";
import { stationOfPath } from "../parts/stations.ts";
import { Drivers } from "../plots/Drivers.tsx";
import { changeEntries } from "../state/entries.ts";
import { holdChanges } from "../state/hold.ts";
import { textOf } from "../state/page-store.ts";
import type { StudyView } from "../state/view.ts";
import { Icon } from "../ui/icons.tsx";
import { DoorMap } from "./DoorMap.tsx";
import { Tolerances } from "./Tolerances.tsx";
import { usePage, useWorkbench } from "./workbench.ts";

const SAMPLES = [5_000, 20_000, 100_000] as const;

export function Study(): ReactNode {
  const { studies } = useWorkbench();
  const { progress, reasons } = useStore(studies.store);
  const study = usePage((state) => state.study);
  const old = usePage((state) => state.study !== null && state.study.text !== textOf(state));
  const [samples, setSamples] = useState<number>(20_000);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what may scroll must be reachable
    <section className="study" tabIndex={0} aria-label="Tolerance study">
      <p className="study-says">
        No two doors come out alike. The study builds this one {samples.toLocaleString("en")} times within its
        tolerances, lets every one swing, and finds the hold that catches them.
      </p>
      <div className="study-tools">
        <label>
          Doors tried{" "}
          <select
            className="entry-input"
            value={samples}
            disabled={progress !== null}
            onChange={({ target }) => setSamples(Number(target.value))}
          >
            {SAMPLES.map((count) => (
              <option key={count} value={count}>
                {count.toLocaleString("en")}
              </option>
            ))}
          </select>
        </label>
        {progress === null ? (
          <Button className="button button-main" onPress={() => studies.run(samples)}>
            {study === null ? "Run the study" : "Run it again"}
          </Button>
        ) : (
          <>
            <Progress share={progress} />
            <Button className="button" onPress={studies.cancel}>
              Cancel
            </Button>
          </>
        )}
      </div>
      {reasons.map((reason) => (
        <p key={reason} className="study-reason">
          <Icon name="caution" /> {reason}
        </p>
      ))}
      {study !== null && <Answer study={study} old={old} />}
      <Tolerances />
      <DoorMap />
    </section>
  );
}

function Progress({ share }: { share: number }): ReactNode {
  return (
    <ProgressBar className="progress" aria-label="Study" value={100 * share}>
      {({ percentage = 0, valueText }) => (
        <>
          <span className="progress-track">
            <span className="progress-bar" style={{ width: `${percentage}%` }} />
          </span>
          <span>{valueText}</span>
        </>
      )}
    </ProgressBar>
  );
}

function Answer({ study, old }: { study: StudyView; old: boolean }): ReactNode {
  const { ui } = useWorkbench();
  return (
    <div className="study-answer" data-old={old || undefined}>
      {old && (
        <p className="study-reason">
          <Icon name="caution" /> The door was changed since: this is about the door as it was.
        </p>
      )}
      <Recommendation study={study} old={old} />
      <Settling study={study} />
      <p>
        At {seconds(study.causesAt)}: {causeList(study.causes)}.
      </p>
      {study.animals.length > 0 && (
        <p>
          {study.animals
            .map(
              ({ name, recommended }) =>
                `${name}: ${recommended === null ? "no hold will do" : seconds(recommended)}`,
            )
            .join(" · ")}
        </p>
      )}
      <h3>What the settling time hangs on</h3>
      <Drivers
        drivers={study.drivers.map((driver) => ({ ...driver, error: driver.error ?? 0 }))}
        label={driverLabel}
        onChoose={(key) => {
          const station = stationOfPath(key);
          if (station !== undefined) ui.setState({ station, wanted: key });
        }}
      />
      {study.notes.map((note) => (
        <p key={note} className="study-note">
          {note}
        </p>
      ))}
      <p className="study-note">
        {study.samples.toLocaleString("en")} doors, seed {study.seed}: the same study gives the same answer
        again.
      </p>
    </div>
  );
}

function Recommendation({ study, old }: { study: StudyView; old: boolean }): ReactNode {
  const { page } = useWorkbench();
  const timer = usePage((state) => state.view?.door.timer ?? null);
  const { recommended, probability, lowerBound, whyNone } = study;
  if (recommended === null || probability === null || lowerBound === null) {
    return (
      <p className="study-sentence">
        <span className="status status-fail">
          <Icon name="fail" /> No hold
        </span>{" "}
        {whyNone}
      </p>
    );
  }
  const set = (): void => {
    if (timer === null) return;
    // Rounded up to a hundredth: never below what was found.
    const { name, changes } = holdChanges(timer, Math.ceil(recommended * 100) / 100);
    page.actions.change((file) => changeEntries(name, file, changes));
  };
  return (
    <p className="study-sentence">
      From a hold of <strong>{seconds(recommended)}</strong> on, {percent(probability)} are caught: at least{" "}
      {percent(lowerBound)}, said with 95 % confidence.{" "}
      {timer !== null && !old && (
        <Button className="button" onPress={set}>
          Set the hold to {seconds(Math.ceil(recommended * 100) / 100)}
        </Button>
      )}
    </p>
  );
}

function Settling({ study }: { study: StudyView }): ReactNode {
  const words = (time: number | null): string => (time === null ? "never" : seconds(time));
  const { settle } = study;
  return (
    <p>
      Half of them settle within {words(settle["50"])} of let-go, 95 in a hundred within {words(settle["95"])}
      , 99 within {words(settle["99"])}.
    </p>
  );
}

function driverLabel(key: string): string {
  if (key === "passage.animal") return "which animal";
  if (key === "passage.direction") return "which way it goes";
  return labelInSentence(key);
}
