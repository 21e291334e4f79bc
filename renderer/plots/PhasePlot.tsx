/** Speed against angle on a canvas; the nearest moment under the pointer is read, and the present one moves along. */
import { type PointerEvent, useEffect, useMemo, useRef } from "react";
import { useFace } from "../strip/face.ts";
import { useSize } from "../strip/use-size.ts";
import { drawPicture, frameOf, innerBox } from "./draw.ts";
import type { Colours, Figure } from "./figure.ts";
import { canvasPen } from "./pen-canvas.ts";
import { nearestSample } from "./readings.ts";
import { useWhileSeen } from "./use-seen.ts";

/** A point that moves as time goes. */
export interface MovingPoint {
  /** In the axes' units. */
  readonly at: () => { readonly x: number; readonly y: number };
  readonly subscribe: (listener: () => void) => () => void;
}

interface Props {
  readonly figure: Figure;
  readonly colours: Colours;
  readonly onIndex: (index: number | null) => void;
  readonly point: MovingPoint;
}

/** How near the pointer must come to a curve, px. */
const REACH = 24;

export function PhasePlot({ figure: newest, colours, onIndex, point }: Props) {
  const place = useRef<HTMLDivElement>(null);
  const figure = useWhileSeen(place, newest);
  const canvas = useRef<HTMLCanvasElement>(null);
  const dot = useRef<HTMLDivElement>(null);
  const found = useRef<HTMLDivElement>(null);
  const size = useSize(place);
  const face = useFace();
  const frame = useMemo(() => {
    if (size === null || figure === null) return null;
    return frameOf(figure, innerBox(size.width, size.height, 0.75 * size.rem));
  }, [figure, size]);
  useEffect(() => {
    const context = canvas.current?.getContext("2d");
    if (size === null || figure === null || frame === null || context === null || context === undefined)
      return;
    const density = window.devicePixelRatio;
    clear(context, Math.round(size.width * density), Math.round(size.height * density));
    context.scale(density, density);
    drawPicture(canvasPen(context, { colours, face }, density), figure, frame, 0.75 * size.rem);
  }, [figure, colours, size, frame, face]);
  useEffect(() => {
    if (frame === null) return;
    const move = (): void => {
      const { x, y } = point.at();
      moveTo(dot.current, frame.toX(x), frame.toY(y));
    };
    move();
    return point.subscribe(move);
  }, [frame, point]);
  const hover = (event: PointerEvent<HTMLElement>): void => {
    const line = figure?.lines[figure.lines.length - 1];
    if (frame === null || line?.x === undefined) return;
    const { left, top } = event.currentTarget.getBoundingClientRect();
    const at = { x: event.clientX - left, y: event.clientY - top };
    const index = nearestSample({ x: line.x, y: line.values }, frame.toX, frame.toY, at, REACH);
    onIndex(index);
    if (found.current !== null) found.current.hidden = index === null;
    if (index !== null) moveTo(found.current, frame.toX(line.x[index]), frame.toY(line.values[index]));
  };
  const leave = (): void => {
    onIndex(null);
    if (found.current !== null) found.current.hidden = true;
  };
  return (
    <div className="plot-live" ref={place} onPointerMove={hover} onPointerLeave={leave} aria-hidden="true">
      <canvas ref={canvas} style={{ width: size?.width, height: size?.height }} />
      <div className="plot-found" ref={found} hidden />
      <div className="plot-dot" ref={dot} />
    </div>
  );
}

/** Makes a canvas this many pixels large and empty; one that has this size already keeps its memory. */
function clear(context: CanvasRenderingContext2D, width: number, height: number): void {
  const { canvas } = context;
  if (canvas.width !== width || canvas.height !== height) Object.assign(canvas, { width, height });
  context.setTransform(1, 0, 0, 1, 0, 0);
  context.clearRect(0, 0, width, height);
}

function moveTo(node: HTMLElement | null, x: number, y: number): void {
  if (node !== null) node.style.transform = `translate(${x.toFixed(1)}px, ${y.toFixed(1)}px)`;
}
