/** The centring magnets; seen through everything, with their poles, on request. */

import { memo, useEffect, useMemo } from "react";
import type { Material } from "three";
import { type BufferGeometry, CylinderGeometry } from "three";
import type { Disc, MagnetLayout, Pole } from "../layout/magnets.ts";
import { AXIS_INDEX, type Vec3 } from "../layout/solids.ts";
import { POLE_COLOURS } from "../look/look.ts";
import { boxesGeometry } from "../shape/chamfered.ts";
import { scattered } from "../shape/scattered.ts";
import { useGeometry, useScene, wholly } from "./context.ts";
import { Label } from "./Label.tsx";
import { Pick } from "./Pick.tsx";
import { Swinging } from "./Swinging.tsx";

interface MagnetsProps {
  readonly magnets: MagnetLayout | null;
  readonly through: boolean;
}

const NONE: readonly never[] = [];

export const Magnets = memo(function Magnets({ magnets, through }: MagnetsProps) {
  const { look } = useScene();
  const carriers = useGeometry(magnets?.carriers ?? NONE, (boxes) => boxesGeometry(boxes, 0.0008));
  if (magnets === null) return null;
  return (
    <Pick part="magnets">
      <Discs discs={magnets.onFrame} through={through} />
      {through && magnets.onFrame.map((disc) => <PoleName key={discKey(disc)} disc={disc} />)}
      <Swinging>
        {!through && <mesh geometry={carriers} material={look.carrier} />}
        <Discs discs={magnets.onFlap} through={through} />
        {through && magnets.onFlap.map((disc) => <PoleName key={discKey(disc)} disc={disc} />)}
      </Swinging>
    </Pick>
  );
});

function discKey({ centre }: Disc): string {
  return centre.join(" ");
}

/** All discs of one side of the gap: two halves, one per pole. */
function Discs({ discs, through }: { readonly discs: readonly Disc[]; readonly through: boolean }) {
  const { look } = useScene();
  const half = useHalfDisc(discs[0]);
  const north = useHalves(half, discs, "N");
  const south = useHalves(half, discs, "S");
  const northSeen = useSeen(look.north, through);
  const southSeen = useSeen(look.south, through);
  const order = through ? 12 : 0;
  return (
    <>
      <mesh geometry={north} material={northSeen} renderOrder={order} />
      <mesh geometry={south} material={southSeen} renderOrder={order} />
    </>
  );
}

/** The material itself, or one like it that nothing hides. */
function useSeen(material: Material, through: boolean): Material {
  const seen = useMemo(() => {
    const copy = material.clone();
    copy.depthTest = false;
    copy.transparent = true;
    copy.opacity = 0.92;
    return copy;
  }, [material]);
  useEffect(() => () => seen.dispose(), [seen]);
  return through ? seen : material;
}

/** Half a disc about its own middle; all discs of a door are alike. `undefined` where there are none. */
function useHalfDisc(disc: Disc | undefined): BufferGeometry {
  const { radius, thickness, axis } = disc ?? { radius: 0, thickness: 0, axis: "x" };
  return useMemo(() => {
    const geometry = new CylinderGeometry(radius, radius, thickness / 2, 28);
    return axis === "x" ? geometry.rotateZ(-Math.PI / 2) : geometry;
  }, [radius, thickness, axis]);
}

/** The halves that have the given pole. */
function useHalves(half: BufferGeometry, discs: readonly Disc[], pole: Pole): BufferGeometry {
  const geometry = useMemo(
    () =>
      wholly(
        scattered(
          half,
          discs.map((disc) => halfPlace(disc, pole)),
        ),
      ),
    [half, discs, pole],
  );
  useEffect(() => () => geometry.dispose(), [geometry]);
  return geometry;
}

function halfPlace({ centre, axis, thickness, towards, pole: facing }: Disc, pole: Pole): Vec3 {
  const at: [number, number, number] = [...centre];
  at[AXIS_INDEX[axis]] += (pole === facing ? 1 : -1) * towards * (thickness / 4);
  return at;
}

/** The letter of the facing pole, on the side of the disc that is turned away from its partner. */
function PoleName({ disc }: { readonly disc: Disc }) {
  const at = [...disc.centre];
  at[AXIS_INDEX[disc.axis]] -= disc.towards * (disc.thickness / 2 + 0.8 * disc.radius);
  return (
    <Label
      text={disc.pole}
      at={at as unknown as Vec3}
      colour={POLE_COLOURS[disc.pole]}
      ground={null}
      letters={11}
      strong
    />
  );
}
