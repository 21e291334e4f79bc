/** A figure over rising x values, live: hover reads it, a drag zooms, a double click shows all again. */
import { useEffect, useRef } from "react";
import "./language.ts";
import UPlot from "uplot";
import "uplot/dist/uPlot.min.css";
import { useFace } from "../strip/face.ts";
import { type Size, useSize } from "../strip/use-size.ts";
import type { Colours, Figure } from "./figure.ts";
import { type PlotLook, plotData, plotKind, plotOptions } from "./uplot-options.ts";
import { useWhileSeen } from "./use-seen.ts";

/** What moves over a picture as time goes: its place on the x axis, and who tells of a new one. */
export interface Moment {
  /** In the x axis' unit; NaN where there is none. */
  readonly at: () => number;
  readonly subscribe: (listener: () => void) => () => void;
}

interface Props {
  readonly figure: Figure;
  readonly colours: Colours;
  readonly onIndex: (index: number | null) => void;
  readonly moment: Moment | null;
}

export function LinePlot({ figure, colours, onIndex, moment }: Props) {
  const place = useRef<HTMLDivElement>(null);
  const shown = useWhileSeen(place, figure);
  const size = useSize(place);
  const face = useFace();
  const plot = useRef<Live | null>(null);
  const latest = useRef<Latest | null>(null);
  useEffect(() => {
    latest.current = shown === null || size === null ? null : { figure: shown, size, onIndex, moment };
  }, [shown, size, onIndex, moment]);
  const kind = shown === null ? null : plotKind(shown);
  const rem = size?.rem ?? null;
  useEffect(() => {
    if (place.current === null || latest.current === null || kind === null || rem === null) return;
    const look = { colours, face, size: 0.75 * rem };
    const made = makePlot(place.current, latest.current, latest, look);
    plot.current = made;
    return () => {
      made.plot.destroy();
      plot.current = null;
    };
  }, [kind, colours, rem, face]);
  useEffect(() => {
    if (size !== null) plot.current?.plot.setSize({ width: size.width, height: size.height });
  }, [size]);
  // Another figure of the same kind is other numbers in the same picture.
  useEffect(() => {
    if (shown !== null) plot.current?.show(shown);
  }, [shown]);
  useEffect(() => moment?.subscribe(() => plot.current?.move()), [moment]);
  return <div className="plot-live" ref={place} aria-hidden="true" />;
}

/** What the plot reads when it draws. */
interface Latest extends Pick<Props, "figure" | "onIndex" | "moment"> {
  readonly size: Size;
}

interface Live {
  readonly plot: UPlot;
  readonly show: (figure: Figure) => void;
  /** Puts the line of the present moment in its place. */
  readonly move: () => void;
}

function makePlot(
  node: HTMLElement,
  first: Latest,
  latest: { current: Latest | null },
  look: PlotLook,
): Live {
  let drawn = first.figure;
  const now = () => latest.current ?? first;
  const options = plotOptions(
    () => now().figure,
    look,
    first.size,
    (index) => now().onIndex(index),
  );
  const plot = new UPlot(options, plotData(drawn), node);
  const line = document.createElement("div");
  line.className = "plot-now";
  plot.over.append(line);
  const move = (): void => {
    const { moment } = now();
    const x = moment === null ? Number.NaN : plot.valToPos(moment.at(), "x");
    line.hidden = !(x >= 0 && x <= plot.over.clientWidth);
    if (!line.hidden) line.style.transform = `translateX(${x.toFixed(1)}px)`;
  };
  move();
  plot.hooks.draw?.push(move);
  return {
    plot,
    move,
    show(figure) {
      if (figure === drawn) return;
      drawn = figure;
      plot.setData(plotData(figure));
    },
  };
}
