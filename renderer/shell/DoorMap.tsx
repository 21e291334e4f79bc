/** A figure over one or two inputs, as a picture one can read off and adopt a place from. */
import { type ReactNode, useId, useMemo, useState } from "react";
import { Button } from "react-aria-components";
import { useStore } from "zustand";
import type { Door } from "../../core/door/door.ts";
import { numericPaths } from "../../core/door/numeric-paths.ts";
import { getValue } from "../../core/door/path.ts";
import { RESULTS, resultNamed } from "../../core/review/results.ts";
import { entryText as entryOf } from "../../core/review/words.ts";
import { axisValue, type MapAxis } from "../../core/study/map-axis.ts";
import { inputScale, resultScale } from "../figures/scale.ts";
import { labelInSentence } from "../parts/labels.ts";
import { MapPicture } from "../plots/MapPicture.tsx";
import { changeEntries, entryFrom } from "../state/entries.ts";
import type { DrawnMap } from "../state/maps.ts";
import { textOf } from "../state/page-store.ts";
import type { UnitSystem } from "../state/view.ts";
import { Icon } from "../ui/icons.tsx";
import { usePage, useSettings, useWorkbench } from "./workbench.ts";

/** Places along the axes: a curve, and a map of two inputs. */
const CURVE = 41;
const MAP = 15;
/** A range offered: this part of the door's own value either way. */
const AROUND = 0.5;

interface AxisChoice {
  readonly key: string;
  readonly from: string;
  readonly to: string;
}

export function DoorMap(): ReactNode {
  const { maps } = useWorkbench();
  const door = usePage((state) => state.view?.door ?? null);
  const { running, map, reasons } = useStore(maps.store);
  if (door === null) return null;
  return (
    <section className="door-map">
      <h3>A figure over a range</h3>
      <MapForm door={door} running={running} key={door.magnets === null ? "bare" : "magnets"} />
      {reasons.map((reason) => (
        <p key={reason} className="study-reason">
          <Icon name="caution" /> {reason}
        </p>
      ))}
      {map !== null && <Drawn map={map} door={door} />}
    </section>
  );
}

function MapForm({ door, running }: { door: Door; running: boolean }): ReactNode {
  const { maps } = useWorkbench();
  const units = useSettings((state) => state.units);
  const keys = useMemo(() => numbersOf(door), [door]);
  const [x, setX] = useState(() =>
    rangeAround(door, door.magnets === null ? "hinge.frictionTorque" : "magnets.gap", units),
  );
  const [y, setY] = useState<AxisChoice | null>(null);
  const [of, setOf] = useState("hold.required");
  const draw = (): void => {
    const count = y === null ? CURVE : MAP;
    const written = (axis: AxisChoice): string => `${axis.key}=${axis.from}..${axis.to}:${count}`;
    maps.draw({ x: written(x), y: y === null ? null : written(y), of });
  };
  return (
    <div className="map-form">
      <label>
        Figure{" "}
        <select className="entry-input" value={of} onChange={({ target }) => setOf(target.value)}>
          {RESULTS.map(({ name, title }) => (
            <option key={name} value={name}>
              {title}
            </option>
          ))}
        </select>
      </label>
      <AxisForm
        label="over"
        keys={keys}
        axis={x}
        choose={(key) => setX(rangeAround(door, key, units))}
        change={setX}
      />
      {y === null ? (
        <Button
          className="button"
          onPress={() =>
            setY(
              rangeAround(
                door,
                x.key === "hinge.frictionTorque" ? "flap.thickness" : "hinge.frictionTorque",
                units,
              ),
            )
          }
        >
          <Icon name="plus" /> and a second input
        </Button>
      ) : (
        <>
          <AxisForm
            label="and"
            keys={keys}
            axis={y}
            choose={(key) => setY(rangeAround(door, key, units))}
            change={setY}
          />
          <Button className="button button-icon" aria-label="Only one input" onPress={() => setY(null)}>
            <Icon name="minus" />
          </Button>
        </>
      )}
      {running ? (
        <Button className="button" onPress={maps.cancel}>
          Cancel
        </Button>
      ) : (
        <Button className="button button-main" onPress={draw}>
          Draw
        </Button>
      )}
    </div>
  );
}

interface AxisFormProps {
  readonly label: string;
  readonly keys: readonly string[];
  readonly axis: AxisChoice;
  readonly choose: (key: string) => void;
  readonly change: (axis: AxisChoice) => void;
}

function AxisForm({ label, keys, axis, choose, change }: AxisFormProps): ReactNode {
  const id = useId();
  return (
    <fieldset className="map-axis">
      <legend className="unseen">{label}</legend>
      <label htmlFor={id}>{label}</label>
      <select
        id={id}
        className="entry-input"
        value={axis.key}
        onChange={({ target }) => choose(target.value)}
      >
        {keys.map((key) => (
          <option key={key} value={key}>
            {labelInSentence(key)}
          </option>
        ))}
      </select>
      <input
        className="entry-input map-end"
        aria-label={`${label}: from`}
        value={axis.from}
        onChange={({ target }) => change({ ...axis, from: target.value })}
      />
      <span aria-hidden="true">to</span>
      <input
        className="entry-input map-end"
        aria-label={`${label}: to`}
        value={axis.to}
        onChange={({ target }) => change({ ...axis, to: target.value })}
      />
    </fieldset>
  );
}

/** Numbers that this door has and that a map can run over. */
function numbersOf(door: Door): string[] {
  const lengths: Readonly<Record<string, number>> = {
    animals: door.animals.length,
    "flap.extraMasses": door.flap.extraMasses.length,
    "solenoid.pull": 0,
  };
  return numericPaths((list) => lengths[list] ?? 1).filter((path) => getValue(door, path) !== null);
}

function rangeAround(door: Door, key: string, units: UnitSystem): AxisChoice {
  const value = getValue(door, key) ?? 0;
  const [from, to] = value === 0 ? [0, 1] : [value * (1 - AROUND), value * (1 + AROUND)];
  return { key, from: entryOf(key, from, units), to: entryOf(key, to, units) };
}

function Drawn({ map, door }: { map: DrawnMap; door: Door }): ReactNode {
  const { page } = useWorkbench();
  const units = useSettings((state) => state.units);
  const old = usePage((state) => map.text !== textOf(state));
  const { request, subject } = map;
  const x = shownAxis(request.x, units);
  const y = request.y === null ? null : shownAxis(request.y, units);
  const numbers = map.values.filter((value) => typeof value === "number");
  const figure = resultScale(subject.unit, numbers[Math.floor(numbers.length / 2)] ?? 1, units);
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
      {old && (
        <p className="study-reason">
          <Icon name="caution" /> The door was changed since: the map is of the door as it was.
        </p>
      )}
      <div className="map-place">
        <MapPicture
          x={x.input}
          {...(y === null ? {} : { y: y.input })}
          of={{
            name: subject.name,
            title: resultNamed(subject.name)?.title ?? subject.title,
            unit: figure.unit,
          }}
          values={map.values.map((value) =>
            typeof value === "number" ? figure.of(value) : value === undefined ? undefined : null,
          )}
          here={place}
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
