/** A protractor at the hinge: degrees, and the bands in which the bolt finds its slot or rides on the edge. */
import { memo, useEffect, useMemo } from "react";
import { type BufferGeometry, DoubleSide } from "three";
import type { DoorGeometry } from "../../state/view.ts";
import type { DoorLayout } from "../layout/layout.ts";
import { arcGeometry, onArc, scaleTicks, sectorGeometry } from "../shape/sector.ts";
import { WHOLE } from "./clip.ts";
import { useScene } from "./context.ts";
import { Label } from "./Label.tsx";
import { Swinging } from "./Swinging.tsx";

const ORDER = 20;

interface AngleScaleProps {
  readonly layout: DoorLayout;
  readonly geometry: DoorGeometry;
  /** rad. */
  readonly stop: number;
}

export const AngleScale = memo(function AngleScale({ layout, geometry, stop }: AngleScaleProps) {
  const { look, cut } = useScene();
  const { slotAngle, captureAngle, blockAngle } = geometry;
  const { reach, hingeHeight } = layout;
  const x = cut ?? -layout.plate.halfWidth - 0.001;
  const radius = 0.62 * reach;
  const ticks = useMemo(() => scaleTicks(stop, 0.018 * reach), [stop, reach]);
  const arc = useOwned(() => arcGeometry(radius, stop, ticks), [radius, stop, ticks]);
  const { palette } = look;
  return (
    <>
      <group position={[x, hingeHeight, 0]}>
        <lineSegments geometry={arc} renderOrder={ORDER} userData={WHOLE}>
          <lineBasicMaterial color={palette.inkSoft} depthTest={false} transparent />
        </lineSegments>
        {blockAngle !== null && captureAngle !== null && (
          <>
            <Band
              reach={reach}
              from={slotAngle + captureAngle}
              to={slotAngle + blockAngle}
              colour={palette.riding}
              opacity={0.5}
            />
            <Band
              reach={reach}
              from={slotAngle - blockAngle}
              to={slotAngle - captureAngle}
              colour={palette.riding}
              opacity={0.5}
            />
            <Band
              reach={reach}
              from={slotAngle - captureAngle}
              to={slotAngle + captureAngle}
              colour={palette.caught}
              opacity={0.75}
            />
          </>
        )}
        {ticks
          .filter(({ named }) => named)
          .map(({ angle }) => (
            <Degrees key={angle} angle={angle} radius={radius + 0.05 * reach + 0.012} />
          ))}
      </group>
      <Swinging>
        <Needle x={x} reach={reach} />
      </Swinging>
    </>
  );
});

/** Makes a geometry anew when one of `on` changes, and gives back the old one. */
function useOwned(make: () => BufferGeometry, on: readonly unknown[]): BufferGeometry {
  // biome-ignore lint/correctness/useExhaustiveDependencies: the caller names what it depends on.
  const geometry = useMemo(make, on);
  useEffect(() => () => geometry.dispose(), [geometry]);
  return geometry;
}

interface BandProps {
  readonly reach: number;
  readonly from: number;
  readonly to: number;
  readonly colour: string;
  readonly opacity: number;
}

function Band({ reach, from, to, colour, opacity }: BandProps) {
  const geometry = useOwned(() => sectorGeometry(0.3 * reach, 0.985 * reach, from, to), [reach, from, to]);
  return (
    <mesh geometry={geometry} renderOrder={ORDER - 1} userData={WHOLE}>
      <meshBasicMaterial color={colour} opacity={opacity} transparent depthTest={false} side={DoubleSide} />
    </mesh>
  );
}

function Degrees({ angle, radius }: { readonly angle: number; readonly radius: number }) {
  const { look } = useScene();
  const [y, z] = onArc(radius, angle);
  const degrees = Math.round((Math.abs(angle) * 180) / Math.PI);
  return (
    <Label
      text={`${degrees}°`}
      at={[0, y, z]}
      colour={look.palette.ink}
      ground={look.palette.label}
      letters={11}
    />
  );
}

/** The flap's plane as a line. */
function Needle({ x, reach }: { readonly x: number; readonly reach: number }) {
  const { look } = useScene();
  const geometry = useOwned(() => sectorGeometry(0.02 * reach, 0.66 * reach, -0.004, 0.004), [reach]);
  return (
    <mesh geometry={geometry} position-x={x} renderOrder={ORDER + 1} userData={WHOLE}>
      <meshBasicMaterial color={look.palette.ink} depthTest={false} transparent side={DoubleSide} />
    </mesh>
  );
}
