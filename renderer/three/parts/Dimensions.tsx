/** Dimension lines and words beside the cut latch, while the flap is at home. */
import { useEffect, useMemo, useState } from "react";
import type { Group } from "three";
import { formatQuantity } from "../../../core/quantity/format.ts";
import { type Dimension, latchDimensions, type YZ } from "../layout/dimensions.ts";
import { lines } from "../shape/sector.ts";
import { useRig, useScene } from "./context.ts";
import { Label } from "./Label.tsx";

/** In front of the cut, m. */
const BEFORE = 0.0003;

export function Dimensions({ x }: { readonly x: number }) {
  const { view, layout, look, units } = useScene();
  const { latch } = view.door;
  const [group, setGroup] = useState<Group | null>(null);
  const { slotAngle, blockAngle } = view.geometry;
  const near = useMemo(
    () => (group === null ? null : { object: group, centre: slotAngle, within: (blockAngle ?? 0) * 1.2 }),
    [group, slotAngle, blockAngle],
  );
  useRig((rig) => rig.atSlot, near);
  const dimensions = useMemo(() => (latch === null ? [] : latchDimensions(latch, layout)), [latch, layout]);
  const geometry = useMemo(() => lines(dimensions.flatMap(dimensionLines)), [dimensions]);
  useEffect(() => () => geometry.dispose(), [geometry]);
  const { palette } = look;
  return (
    <group ref={setGroup} position-x={x + BEFORE}>
      <lineSegments geometry={geometry} renderOrder={25}>
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

/** The line itself, a short tick at either end, and thin lines from what is measured. */
function dimensionLines({ from, to, feet, textAt }: Dimension): number[] {
  const along: YZ = [to[0] - from[0], to[1] - from[1]];
  const length = Math.hypot(along[0], along[1]) || 1;
  const tick: YZ = [
    (along[1] / length + along[0] / length) * 0.0009,
    (along[0] / length + along[1] / length) * 0.0009,
  ];
  const ends = [from, to].flatMap(([y, z]) =>
    segment([y - tick[0], z - tick[1]], [y + tick[0], z + tick[1]]),
  );
  const nearer =
    Math.hypot(from[0] - textAt[0], from[1] - textAt[1]) < Math.hypot(to[0] - textAt[0], to[1] - textAt[1]);
  return [
    ...segment(from, to),
    ...ends,
    ...segment(feet[0], from),
    ...segment(feet[1], to),
    ...segment(nearer ? from : to, textAt),
  ];
}

function segment(a: YZ, b: YZ): number[] {
  return [0, a[0], a[1], 0, b[0], b[1]];
}
