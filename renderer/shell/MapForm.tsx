/** What a map is to show: the figure, the inputs it runs over and their ranges; Draw, and how far it is. */
import { type ReactNode, useId, useMemo, useState } from "react";
import { Button } from "react-aria-components";
import { useStore } from "zustand";
import type { Door } from "../../core/door/door.ts";
import { numericPaths } from "../../core/door/numeric-paths.ts";
import { getValue } from "../../core/door/path.ts";
import { entryText as entryOf } from "../../core/review/words.ts";
import { labelInSentence } from "../parts/labels.ts";
import { FIGURE_GROUPS, isSampled } from "../plots/map-figures.ts";
import { CURVE_PLACES, MAP_PLACES } from "../plots/map-grid.ts";
import type { UnitSystem } from "../state/view.ts";
import { Icon } from "../ui/icons.tsx";
import { Progress } from "./Progress.tsx";
import { useSettings, useWorkbench } from "./workbench.ts";

/** A range offered: this part of the door's own value either way. */
const AROUND = 0.5;

interface AxisChoice {
  readonly key: string;
  readonly from: string;
  readonly to: string;
}

export function MapForm({ door }: { door: Door }): ReactNode {
  const { maps } = useWorkbench();
  const units = useSettings((state) => state.units);
  const keys = useMemo(() => numbersOf(door), [door]);
  const [x, setX] = useState(() =>
    rangeAround(door, door.magnets === null ? "hinge.frictionTorque" : "magnets.gap", units),
  );
  const [y, setY] = useState<AxisChoice | null>(null);
  const [of, setOf] = useState("hold.required");
  const draw = (): void => {
    const count = y === null ? CURVE_PLACES : MAP_PLACES;
    const written = (axis: AxisChoice): string => `${axis.key}=${axis.from}..${axis.to}:${count}`;
    maps.draw({ x: written(x), y: y === null ? null : written(y), of, heavy: isSampled(of) });
  };
  const second = (): void => {
    const key = x.key === "hinge.frictionTorque" ? "flap.thickness" : "hinge.frictionTorque";
    setY(rangeAround(door, key, units));
  };
  return (
    <div className="map-form">
      <FigureChoice of={of} choose={setOf} />
      <AxisForm
        label="over"
        keys={keys}
        axis={x}
        choose={(key) => setX(rangeAround(door, key, units))}
        change={setX}
      />
      {y === null ? (
        <Button className="button map-second" onPress={second}>
          <Icon name="plus" /> a second input
        </Button>
      ) : (
        <AxisForm
          label="and"
          keys={keys}
          axis={y}
          choose={(key) => setY(rangeAround(door, key, units))}
          change={setY}
          remove={() => setY(null)}
        />
      )}
      <DrawTools draw={draw} />
    </div>
  );
}

function FigureChoice({ of, choose }: { of: string; choose: (name: string) => void }): ReactNode {
  const [id, hint] = [useId(), useId()];
  const sampled = isSampled(of);
  return (
    <>
      <label htmlFor={id}>Figure</label>
      <select
        id={id}
        className="entry-input map-figure"
        value={of}
        aria-describedby={sampled ? hint : undefined}
        onChange={({ target }) => choose(target.value)}
      >
        {FIGURE_GROUPS.map(({ title, figures }) => (
          <optgroup key={title} label={title}>
            {figures.map((figure) => (
              <option key={figure.name} value={figure.name}>
                {figure.title}
              </option>
            ))}
          </optgroup>
        ))}
      </select>
      {sampled && (
        <p id={hint} className="study-note map-hint">
          At each place the same 256 doors, spread by the tolerances, swing: an estimate to compare places by.
          Only the study above says how sure a hold is.
        </p>
      )}
    </>
  );
}

function DrawTools({ draw }: { draw: () => void }): ReactNode {
  const { maps } = useWorkbench();
  const { running, map } = useStore(maps.store);
  if (!running) {
    return (
      <div className="map-tools">
        <Button className="button button-main" onPress={draw}>
          Draw
        </Button>
      </div>
    );
  }
  const values = map?.values ?? [];
  const done = values.filter((value) => value !== undefined).length;
  return (
    <div className="map-tools">
      <Button className="button" onPress={maps.cancel}>
        Cancel
      </Button>
      <Progress label="Map" share={done / Math.max(1, values.length)} />
    </div>
  );
}

interface AxisFormProps {
  readonly label: string;
  readonly keys: readonly string[];
  readonly axis: AxisChoice;
  readonly choose: (key: string) => void;
  readonly change: (axis: AxisChoice) => void;
  readonly remove?: () => void;
}

function AxisForm({ label, keys, axis, choose, change, remove }: AxisFormProps): ReactNode {
  const id = useId();
  return (
    <fieldset className="map-axis">
      <legend className="unseen">{label}</legend>
      <label htmlFor={id}>{label}</label>
      <div className="map-axis-entries">
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
        {remove !== undefined && (
          <Button className="button button-icon" aria-label="Only one input" onPress={remove}>
            <Icon name="minus" />
          </Button>
        )}
      </div>
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
