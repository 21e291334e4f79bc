/** The swing in four pictures: angle over time, speed against angle, where the energy goes, torque against angle. */
import { useCallback, useMemo, useState } from "react";
import type { DoorView, PlotsProps } from "../state/view.ts";
import { useColours } from "./colours.ts";
import type { Figure } from "./figure.ts";
import { LinePlot, type Moment } from "./LinePlot.tsx";
import { type MovingPoint, PhasePlot } from "./PhasePlot.tsx";
import { PlotCard } from "./PlotCard.tsx";
import "./plots.css";
import { readingsAt, readingText } from "./readings.ts";
import { SwingTable } from "./SwingTable.tsx";
import { summaryOf } from "./summaries.ts";
import { angleFigure, energyFigure, phaseFigure, readSwing, torqueFigure } from "./swing-figures.ts";
import { figureTable } from "./tables.ts";
import { type SaveBytes, saveHere } from "./write-out.ts";

const DEGREES = 180 / Math.PI;

export interface PlotsWithSave extends PlotsProps {
  /** How pictures are written; the desktop's dialog or a download where none is given. */
  readonly save?: SaveBytes;
}

export default function Plots({ view: latest, pinned, playhead, units, save = saveHere }: PlotsWithSave) {
  const view = useSteady(latest);
  const colours = useColours();
  const [near, setNear] = useState(false);
  const reading = useMemo(() => readSwing(view), [view]);
  const figures = {
    angle: useMemo(() => angleFigure(view, pinned, reading), [view, pinned, reading]),
    phase: useMemo(() => phaseFigure(view, pinned), [view, pinned]),
    energy: useMemo(() => energyFigure(view), [view]),
    torque: useMemo(() => torqueFigure(view, units, near), [view, units, near]),
  };
  const { letGo } = view.replay.marks;
  const { subscribe } = playhead;
  const now = useMemo<Moment>(
    () => ({ at: () => playhead.time - letGo, subscribe }),
    [playhead, letGo, subscribe],
  );
  const point = useMemo<MovingPoint>(
    () => ({ at: () => stateAt(latest, playhead.time), subscribe }),
    [latest, playhead, subscribe],
  );
  const common = { colours, save, door: view.door.name || "door" };
  const reads = {
    angle: useRead(figures.angle),
    energy: useRead(figures.energy),
    torque: useRead(figures.torque),
    phase: useReadPhase(figures.phase, view),
  };
  const sideways = (name: "angle" | "energy" | "torque", moment: Moment | null, tools?: React.ReactNode) => (
    <PlotCard
      {...common}
      figure={figures[name]}
      read={reads[name]}
      table={() => figureTable(view, name)}
      summary={summaryOf(view, name)}
      tools={tools}
    >
      {(onIndex) => <LinePlot figure={figures[name]} {...{ colours, onIndex, moment }} />}
    </PlotCard>
  );
  return (
    <div className="plots">
      <div className="plots-grid">
        {sideways("angle", now)}
        <PlotCard
          {...common}
          figure={figures.phase}
          read={reads.phase}
          table={() => figureTable(view, "phase")}
          summary={summaryOf(view, "phase")}
          beside={<SwingTable {...{ view, reading }} />}
        >
          {(onIndex) => <PhasePlot figure={figures.phase} {...{ colours, onIndex, point }} />}
        </PlotCard>
        {sideways("energy", now)}
        {sideways("torque", null, <Nearness near={near} onChange={setNear} />)}
      </div>
    </div>
  );
}

/** The free swing does not change while only the hold is tried: the pictures stay those of the door's text. */
function useSteady(latest: DoorView): DoorView {
  const [steady, setSteady] = useState(latest);
  if (steady.text !== latest.text) {
    setSteady(latest);
    return latest;
  }
  return steady;
}

function Nearness({ near, onChange }: { near: boolean; onChange: (near: boolean) => void }) {
  return (
    <button type="button" className="plot-tool" aria-pressed={near} onClick={() => onChange(!near)}>
      Near the slot
    </button>
  );
}

function useRead(figure: Figure) {
  return useCallback(
    (index: number) => ({
      place: `at ${readingText(figure.values[index], figure.x)}`,
      values: readingsAt(figure, index),
    }),
    [figure],
  );
}

/** A phase portrait's sample is a moment: its time, angle and speed. */
function useReadPhase(figure: Figure, view: DoorView) {
  return useCallback(
    (index: number) => {
      const { time, angle, speed } = view.swing;
      const value = `${readingText(angle[index] * DEGREES, figure.x)}, ${readingText(speed[index] * DEGREES, figure.y)}`;
      return { place: `at ${time[index].toFixed(2)} s`, values: new Map([["swing", value]]) };
    },
    [figure, view],
  );
}

function stateAt({ replay }: DoorView, time: number): { x: number; y: number } {
  const { angle, speed, interval } = replay;
  const i = Math.min(angle.length - 1, Math.max(0, Math.round(time / interval)));
  return { x: angle[i] * DEGREES, y: speed[i] * DEGREES };
}
