/** The tolerance study: how sure is a hold, over all the doors that could come of this drawing. */
import { type ReactNode, useState } from "react";
import { Button } from "react-aria-components";
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
import { Segments } from "../ui/Segments.tsx";
import { DoorMap } from "./DoorMap.tsx";
import { Progress } from "./Progress.tsx";
import { Reasons } from "./Reasons.tsx";
import { Settling } from "./Settling.tsx";
import { Tolerances } from "./Tolerances.tsx";
import { usePage, useWorkbench } from "./workbench.ts";
import "./study.css";

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
            <Button className="button" onPress={studies.cancel}>
              Cancel
            </Button>
            <Progress label="Study" share={progress} />
          </>
        )}
      </div>
      <Reasons reasons={reasons} />
      {study !== null && <Answer study={study} old={old} />}
      <Tolerances />
      <DoorMap />
    </section>
  );
}

function Answer({ study, old }: { study: StudyView; old: boolean }): ReactNode {
  return (
    <div className="study-answer" data-old={old || undefined}>
      <Reasons reasons={old ? ["The door was changed since: this is about the door as it was."] : []} />
      <Recommendation study={study} old={old} />
      <p>
        At a hold of {seconds(study.causesAt)}: {causeList(study.causes)}.
      </p>
      <Settling study={study} />
      {study.drivers.length + study.holdDrivers.length > 0 && <WhatDrives study={study} />}
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
    <>
      <p className="study-sentence">
        From a hold of <strong>{together(seconds(recommended))}</strong> on, {together(percent(probability))}{" "}
        are caught: at least {together(percent(lowerBound))}, with {together("95 % confidence")}.
      </p>
      {timer !== null && !old && (
        <div>
          <Button className="button" onPress={set}>
            Set the hold to {seconds(Math.ceil(recommended * 100) / 100)}
          </Button>
        </div>
      )}
    </>
  );
}

/** A figure does not break before its unit. */
function together(text: string): string {
  return text.replaceAll(" ", "\u00a0");
}

const DRIVEN = [
  ["settling", "settling time"],
  ["hold", "hold needed"],
] as const;
type Driven = (typeof DRIVEN)[number][0];

function WhatDrives({ study }: { study: StudyView }): ReactNode {
  const { ui } = useWorkbench();
  const [driven, setDriven] = useState<Driven>("settling");
  const drivers = driven === "settling" ? study.drivers : study.holdDrivers;
  const of = DRIVEN.find(([id]) => id === driven)?.[1] ?? "";
  return (
    <>
      <div className="study-head">
        <h3>What the {of} hangs on</h3>
        <Segments label="What is looked at" items={DRIVEN} value={driven} onChange={setDriven} />
      </div>
      {drivers.length === 0 ? (
        <p>It does not vary.</p>
      ) : (
        <Drivers
          key={driven}
          drivers={drivers}
          of={of}
          label={driverLabel}
          leads={(key) => stationOfPath(key) !== undefined}
          onChoose={(key) => {
            const station = stationOfPath(key);
            if (station !== undefined) ui.setState({ station, wanted: key });
          }}
        />
      )}
    </>
  );
}

function driverLabel(key: string): string {
  if (key === "passage.animal") return "which animal";
  if (key === "passage.direction") return "which way it goes";
  return labelInSentence(key);
}
