/** A figure over one or two inputs, as a picture one can read off and adopt a place from. */
import type { ReactNode } from "react";
import { useStore } from "zustand";
import type { Door } from "../../core/door/door.ts";
import { getValue } from "../../core/door/path.ts";
import { fieldAt } from "../../core/door/schema.ts";
import { entryText as entryOf } from "../../core/review/words.ts";
import { axisValue, type MapAxis } from "../../core/study/map-axis.ts";
import { inputScale } from "../figures/scale.ts";
import { labelInSentence } from "../parts/labels.ts";
import { MapPicture } from "../plots/MapPicture.tsx";
import { absentWords, figureScale, figureTitle } from "../plots/map-figures.ts";
import { changeEntries, entryFrom } from "../state/entries.ts";
import { type DrawnMap, isMapOf } from "../state/maps.ts";
import type { UnitSystem } from "../state/view.ts";
import { MapForm } from "./MapForm.tsx";
import { Reasons } from "./Reasons.tsx";
import { usePage, useSettings, useWorkbench } from "./workbench.ts";

export function DoorMap(): ReactNode {
  const { maps } = useWorkbench();
  const door = usePage((state) => state.view?.door ?? null);
  const { running, map, reasons } = useStore(maps.store);
  if (door === null) return null;
  return (
    <section className="door-map" aria-labelledby="door-map-title">
      <h3 id="door-map-title">A figure over a range</h3>
      <MapForm door={door} key={door.magnets === null ? "bare" : "magnets"} />
      <Reasons reasons={reasons.map(withLabel)} />
      {map !== null && <Drawn map={map} door={door} running={running} />}
      {map === null && running && (
        <p className="map-place map-waiting">The first places are being computed…</p>
      )}
    </section>
  );
}

/** A fault that begins with the path of an input begins with its label instead. */
function withLabel(reason: string): string {
  const [whole, path] = /^([\w.]+): /.exec(reason) ?? [];
  return whole === undefined || fieldAt(path) === undefined
    ? reason
    : `${labelInSentence(path)}: ${reason.slice(whole.length)}`;
}

function Drawn({ map, door, running }: { map: DrawnMap; door: Door; running: boolean }): ReactNode {
  const { page } = useWorkbench();
  const units = useSettings((state) => state.units);
  const old = usePage(({ document }) => document === null || !isMapOf(map, document.file));
  const { request, subject } = map;
  const x = shownAxis(request.x, units);
  const y = request.y === null ? null : shownAxis(request.y, units);
  const numbers = map.values.filter((value) => typeof value === "number");
  const figure = figureScale(subject.name, subject.unit, numbers[Math.floor(numbers.length / 2)] ?? 1, units);
  const place = {
    x: x.of(getValue(door, request.x.key) ?? request.x.from),
    ...(request.y === null || y === null ? {} : { y: y.of(getValue(door, request.y.key) ?? request.y.from) }),
  };
  const adopt = (atX: number, atY: number | null): void => {
    const taken = [
      siOf(request.x, x, atX),
      ...(request.y === null || y === null || atY === null ? [] : [siOf(request.y, y, atY)]),
    ];
    const changes = taken.map(({ key, value }) => {
      const text = entryOf(key, Number(value.toPrecision(4)), units);
      return { path: key, text, entry: entryFrom(key, text) };
    });
    const name = `Adopt ${changes.map(({ path, text }) => `${labelInSentence(path)} ${text}`).join(", ")}`;
    page.actions.change((file) => changeEntries(name, file, changes));
  };
  return (
    <>
      <Reasons reasons={old ? ["The door was changed since: the map is of the door as it was."] : []} />
      <div className="map-place">
        <MapPicture
          x={x.input}
          {...(y === null ? {} : { y: y.input })}
          of={{
            name: subject.name,
            title: figureTitle(subject.name, subject.title),
            unit: figure.unit,
            absent: absentWords(subject.name),
          }}
          values={map.values.map((value) =>
            typeof value === "number" ? figure.of(value) : value === undefined ? undefined : null,
          )}
          here={place}
          growing={running}
          onAdopt={adopt}
        />
      </div>
    </>
  );
}

interface ShownAxis {
  readonly input: {
    readonly key: string;
    readonly label: string;
    readonly unit: string;
    readonly values: readonly number[];
  };
  readonly of: (si: number) => number;
}

function shownAxis(axis: MapAxis, units: UnitSystem): ShownAxis {
  const { unit, of } = inputScale(axis.key, Math.max(Math.abs(axis.from), Math.abs(axis.to)), units);
  const values = Array.from({ length: axis.count }, (_, i) => of(axisValue(axis, i)));
  return { input: { key: axis.key, label: labelInSentence(axis.key), unit, values }, of };
}

/** The SI value of a place on an axis. */
function siOf(axis: MapAxis, { input }: ShownAxis, at: number): { key: string; value: number } {
  return { key: axis.key, value: axisValue(axis, Math.max(0, input.values.indexOf(at))) };
}
