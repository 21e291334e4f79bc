/** The door at hand beside the pinned copy: the figures a builder decides by, and how each changed. */
import type { ReactNode } from "react";
import { Button } from "react-aria-components";
import { resultNamed } from "../../core/review/results.ts";
import { changeText, figureText } from "../figures/format.ts";
import type { DoorView, UnitSystem } from "../state/view.ts";
import { Icon } from "../ui/icons.tsx";
import { usePage, useSettings, useWorkbench } from "./workbench.ts";

const KEY_RESULTS = [
  "hold.required",
  "swing.settleTime",
  "swing.deadBand",
  "swing.centrePasses",
  "latch.captureAngle",
  "magnets.peakTorque",
  "push.force",
  "push.limit",
  "wind.gustSpeed",
  "flap.mass",
  "solenoid.pullInVoltage",
  "solenoid.continuousTemperature",
  "supply.current",
  "fit.heightSpare",
  "fit.widthSpare",
] as const;

export function Compare(): ReactNode {
  const { commands } = useWorkbench();
  const view = usePage((state) => state.view);
  const pinned = usePage((state) => state.pinned);
  const units = useSettings((state) => state.units);
  if (view === null) return null;
  if (pinned === null) {
    return (
      <div className="compare-empty">
        <p>
          Pin a copy of the door, then change something: both stand here side by side, and the copy’s flap
          swings along as a ghost.
        </p>
        <Button className="button" onPress={() => commands.run("pin")}>
          <Icon name="pin" /> Pin a copy
        </Button>
      </div>
    );
  }
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a table that may scroll must be reachable
    <section className="compare" tabIndex={0} aria-label="Comparison">
      <table>
        <thead>
          <tr>
            <th scope="col">Figure</th>
            <th scope="col">Pinned: {pinned.door.name}</th>
            <th scope="col">Now</th>
            <th scope="col">Change</th>
          </tr>
        </thead>
        <tbody>
          <OutcomeRow pinned={pinned} view={view} />
          {KEY_RESULTS.map((name) => (
            <Row key={name} name={name} pinned={pinned} view={view} units={units} />
          ))}
        </tbody>
      </table>
    </section>
  );
}

function OutcomeRow({ pinned, view }: { pinned: DoorView; view: DoorView }): ReactNode {
  const words = ({ relatch }: DoorView): string => relatch?.outcome ?? "—";
  return (
    <tr>
      <th scope="row">what becomes of the bolt</th>
      <td>{words(pinned)}</td>
      <td>{words(view)}</td>
      <td>{words(pinned) === words(view) ? "the same" : "changed"}</td>
    </tr>
  );
}

interface RowProps {
  readonly name: string;
  readonly pinned: DoorView;
  readonly view: DoorView;
  readonly units: UnitSystem;
}

function Row({ name, pinned, view, units }: RowProps): ReactNode {
  const definition = resultNamed(name);
  const before = pinned.results[name]?.value ?? null;
  const now = view.results[name]?.value ?? null;
  if (definition === undefined || (before === null && now === null)) return null;
  const { title, unit } = definition;
  const change = before === null || now === null ? "—" : changeText(now - before, unit, units);
  return (
    <tr data-same={before === now || undefined}>
      <th scope="row">{title}</th>
      <td>{figureText(before, unit, units)}</td>
      <td>{figureText(now, unit, units)}</td>
      <td>{change}</td>
    </tr>
  );
}
