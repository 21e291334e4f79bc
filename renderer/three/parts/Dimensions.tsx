/** Dimension lines and words beside the cut latch. */
import { memo, useEffect, useMemo } from "react";
import type { Latch } from "../../../core/door/door.ts";
import { formatQuantity } from "../../../core/quantity/format.ts";
import { type Dimension, latchDimensions, type YZ } from "../layout/dimensions.ts";
import type { LatchLayout } from "../layout/latch.ts";
import { lines } from "../shape/sector.ts";
import { WHOLE } from "./clip.ts";
import { useScene } from "./context.ts";
import { Label } from "./Label.tsx";
import { Swinging } from "./Swinging.tsx";

/** In front of the cut, m. */
const BEFORE = 0.0003;

interface DimensionsProps {
  readonly latch: Latch;
  readonly placed: LatchLayout;
  readonly x: number;
}

export const Dimensions = memo(function Dimensions({ latch, placed, x }: DimensionsProps) {
  const sets = useMemo(() => latchDimensions(latch, placed), [latch, placed]);
  const strike = <DimensionSet dimensions={sets.strike} x={x} />;
  const bolt = <DimensionSet dimensions={sets.bolt} x={x} />;
  const strikeSwings = placed.boltOn === "frame";
  return (
    <>
      <Swinging>{strikeSwings ? strike : bolt}</Swinging>
      {strikeSwings ? bolt : strike}
    </>
  );
});

function DimensionSet({ dimensions, x }: { readonly dimensions: readonly Dimension[]; readonly x: number }) {
  const { look, units } = useScene();
  const geometry = useMemo(() => lines(dimensions.flatMap(dimensionLines)), [dimensions]);
  useEffect(() => () => geometry.dispose(), [geometry]);
  const { palette } = look;
  return (
    <group position-x={x + BEFORE}>
      <lineSegments geometry={geometry} renderOrder={25} userData={WHOLE}>
        <lineBasicMaterial color={palette.ink} depthTest={false} transparent />
      </lineSegments>
      {dimensions.map(({ name, value, textAt, side }) => (
        <Label
          key={name}
          text={`${name} ${formatQuantity(value, "length", units, 3)}`}
          at={[0, textAt[0], textAt[1]]}
          anchor={side === 0 ? LEFT : RIGHT}
          colour={palette.ink}
          ground={palette.label}
          letters={12}
        />
      ))}
    </group>
  );
}

const LEFT = [0, 0.5] as const;
const RIGHT = [1, 0.5] as const;

/** Half a tick at the end of a line, m. */
const TICK = 0.0009;

/** The line itself, a slanted tick at either end, thin lines from what is measured, one to the words. */
function dimensionLines({ from, to, feet, textAt }: Dimension): number[] {
  const nearer = distance(from, textAt) < distance(to, textAt) ? from : to;
  const ticks = [from, to].flatMap(([y, z]) => segment([y - TICK, z - TICK], [y + TICK, z + TICK]));
  return [
    ...segment(from, to),
    ...ticks,
    ...segment(feet[0], from),
    ...segment(feet[1], to),
    ...segment(nearer, textAt),
  ];
}

function distance(a: YZ, b: YZ): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1]);
}

function segment(a: YZ, b: YZ): number[] {
  return [0, a[0], a[1], 0, b[0], b[1]];
}
