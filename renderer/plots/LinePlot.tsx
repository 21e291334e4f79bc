/** A figure over rising x values, live: hover reads it, a drag zooms, a double click shows all again. */
import { useEffect, useRef } from "react";
import "./language.ts";
import UPlot from "uplot";
import "uplot/dist/uPlot.min.css";
import { readFace, useFaceLoaded } from "../strip/face.ts";
import { type Size, useSize } from "../strip/use-size.ts";
import type { Colours, Figure } from "./figure.ts";
import { plotData, plotOptions } from "./uplot-options.ts";

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
  const plot = useRef<UPlot | null>(null);
  const loaded = useFaceLoaded();
  const size = useSize(place);
  const rem = size?.rem ?? null;
  const latest = useRef<Size | null>(null);
  useEffect(() => {
    latest.current = size;
    if (size !== null) plot.current?.setSize({ width: size.width, height: size.height });
  }, [size]);
  useEffect(() => {
    const node = place.current;
    const box = latest.current;
    if (node === null || box === null || rem === null) return;
    const look = { colours, face: loaded ? readFace() : "sans-serif", size: 0.75 * rem };
    const made = new UPlot(plotOptions(figure, look, box, onIndex), plotData(figure), node);
    plot.current = made;
    const line = document.createElement("div");
    line.className = "plot-now";
    made.over.append(line);
    const move = (): void => {
      const x = moment === null ? Number.NaN : made.valToPos(moment.at(), "x");
      line.hidden = !(x >= 0 && x <= made.over.clientWidth);
      if (!line.hidden) line.style.transform = `translateX(${x.toFixed(1)}px)`;
    };
    move();
    const forget = moment?.subscribe(move);
    made.hooks.draw?.push(move);
    return () => {
      forget?.();
      made.destroy();
      plot.current = null;
    };
  }, [figure, colours, onIndex, moment, rem, loaded]);
  return <div className="plot-live" ref={place} aria-hidden="true" />;
}
