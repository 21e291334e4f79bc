/** One part's form: its findings, its inputs, and beneath them the figures it decides. */
import { lazy, memo, type ReactNode, Suspense, useMemo, useState } from "react";
import { Button } from "react-aria-components";
import { useShallow } from "zustand/react/shallow";
import { type DoorFile, fileEntry } from "../../core/door/file.ts";
import { fieldAt, sectionNamed } from "../../core/door/schema.ts";
import type { Finding } from "../../core/review/finding.ts";
import { usePage, useUi, useWorkbench } from "../shell/workbench.ts";
import { changeEntries } from "../state/entries.ts";
import { findingsOf } from "../state/page-store.ts";
import { Icon } from "../ui/icons.tsx";
import { CAUTIONS } from "./cautions.ts";
import { Entry } from "./EntryInput.tsx";
import { Figure } from "./Figure.tsx";
import { FindingCard } from "./FindingCard.tsx";
import { ListOrCurve, SectionList } from "./ListEditor.tsx";
import { Note, NoteContext } from "./note.tsx";
import { type Group, STATIONS, type Station } from "./stations.ts";
import { isAsked, sectionTemplate } from "./templates.ts";
import { Verdicts } from "./Verdicts.tsx";

const Trial = lazy(() => import("../trial/Trial.tsx").then(({ Trial }) => ({ default: Trial })));

export function StationForm(): ReactNode {
  const id = useUi((state) => state.station);
  const station = STATIONS.find((one) => one.id === id) ?? STATIONS[0];
  const [note, setNote] = useState<string | null>(null);
  const taker = useMemo(() => ({ set: setNote }), []);
  return (
    <section
      className="form"
      role="tabpanel"
      aria-labelledby={`tab-${station.id}`}
      id="station-panel"
      key={station.id}
      tabIndex={-1}
    >
      <h2>{station.title}</h2>
      <p className="form-says">{station.says}</p>
      <NoteContext value={taker}>
        {station.id === "verdict" ? <Verdicts /> : <PartForm station={station} />}
      </NoteContext>
      {station.id !== "verdict" && <Note text={note} />}
    </section>
  );
}

const PartForm = memo(function PartForm({ station }: { station: Station }): ReactNode {
  return (
    <>
      {station.id === "trial" && (
        <Suspense fallback={<p className="form-says">Setting up…</p>}>
          <Trial />
        </Suspense>
      )}
      {station.groups.map((group) => (
        <GroupForm key={group.section} group={group} alone={station.groups.length === 1} />
      ))}
      <Figures names={station.figures} />
      <Found station={station} />
      {(CAUTIONS[station.id] ?? []).map((caution) => (
        <p key={caution} className="caution">
          <Icon name="caution" /> {caution}
        </p>
      ))}
    </>
  );
});

function Found({ station }: { station: Station }): ReactNode {
  const own = usePage(useShallow((state) => findingsOf(state).filter(isOpenAt(station))));
  if (own.length === 0) return null;
  return (
    <section>
      <h3>What is found here</h3>
      <ul className="findings">
        {own.map((finding) => (
          <FindingCard key={finding.id} finding={finding} linked={false} />
        ))}
      </ul>
    </section>
  );
}

const isOpenAt =
  ({ parts }: Station) =>
  ({ part, status }: Finding): boolean =>
    status !== "ok" && parts.includes(part);

function Figures({ names }: { names: readonly string[] }): ReactNode {
  const older = usePage((state) => state.faults.length > 0);
  const there = usePage((state) => state.view !== null);
  if (!there || names.length === 0) return null;
  return (
    <section className="figures" data-older={older || undefined} aria-label="What this part decides">
      <h3>What it decides{older ? ", before the wrong entry" : ""}</h3>
      {names.map((name) => (
        <Figure key={name} name={name} />
      ))}
    </section>
  );
}

function GroupForm({ group, alone }: { group: Group; alone: boolean }): ReactNode {
  const { page } = useWorkbench();
  const { section, title, optional } = group;
  const there = usePage(({ document }) => document !== null);
  const missing = usePage(({ document }) => isMissing(document?.file, group));
  const keys = usePage(useShallow(({ document }) => askedOf(document?.file, section, group.keys)));
  const more = usePage(useShallow(({ document }) => askedOf(document?.file, section, group.more)));
  if (!there) return null;
  const shape = sectionNamed(section)?.shape;
  if (shape?.kind === "list") return <SectionList path={section} field={shape} />;
  const low = title.toLowerCase();
  if (missing) {
    return (
      <div className="group group-missing">
        <p>This door has no {low} yet. What depends on it is not computed.</p>
        <Button
          className="button"
          onPress={() =>
            page.actions.change((f) =>
              changeEntries(`Add the ${low}`, f, [{ path: section, entry: sectionTemplate(section) }]),
            )
          }
        >
          <Icon name="plus" /> Add the {low}
        </Button>
      </div>
    );
  }
  return (
    <fieldset className="group">
      <legend className={alone ? "unseen" : ""}>{title}</legend>
      <SectionFaults path={section} />
      {keys.map((key) => (
        <Key key={key} path={`${section}.${key}`} />
      ))}
      {more.length > 0 && <MoreKeys section={section} keys={more} />}
      {optional && (
        <Button
          className="button button-small button-quiet"
          onPress={() =>
            page.actions.change((f) =>
              changeEntries(`Take out the ${low}`, f, [{ path: section, entry: undefined }]),
            )
          }
        >
          <Icon name="minus" /> Take out the {low}
        </Button>
      )}
    </fieldset>
  );
}

function isMissing(file: DoorFile | undefined, { section, optional }: Group): boolean {
  return optional && file !== undefined && fileEntry(file, section) === undefined;
}

function askedOf(file: DoorFile | undefined, section: string, keys: readonly string[]): readonly string[] {
  return file === undefined ? [] : keys.filter((key) => isAsked(file, `${section}.${key}`));
}

/** Open by itself where one of its entries is wrong or wanted. */
function MoreKeys({ section, keys }: { section: string; keys: readonly string[] }): ReactNode {
  const paths = keys.map((key) => `${section}.${key}`);
  const wrong = usePage((state) => state.faults.some(({ path }) => paths.includes(path)));
  const wanted = useUi((state) => state.wanted !== null && paths.includes(state.wanted));
  const [opened, setOpened] = useState(false);
  const open = opened || wrong || wanted;
  return (
    <details className="more" open={open} onToggle={(event) => setOpened(event.currentTarget.open)}>
      <summary>
        {keys.length} more {keys.length === 1 ? "entry" : "entries"}
      </summary>
      {paths.map((path) => (
        <Key key={path} path={path} />
      ))}
    </details>
  );
}

function Key({ path }: { path: string }): ReactNode {
  const kind = fieldAt(path)?.kind;
  if (kind !== "list" && kind !== "curve") return <Entry path={path} />;
  return (
    <div className="sublist">
      <SectionFaults path={path} />
      <ListOrCurve path={path} />
    </div>
  );
}

/** What is wrong with a section or a list as a whole. */
function SectionFaults({ path }: { path: string }): ReactNode {
  const faults = usePage(useShallow((state) => state.faults.filter((fault) => fault.path === path)));
  return faults.map(({ message }) => (
    <p key={message} className="entry-fault" role="alert">
      {message}
    </p>
  ));
}
