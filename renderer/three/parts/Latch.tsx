/** Strike, bolt and solenoid, each in the frame of what it is fixed to. */
import { memo, type ReactNode, useMemo, useState } from "react";
import type { Group, Mesh } from "three";
import type { LatchLayout } from "../layout/latch.ts";
import type { Box, Rod } from "../layout/solids.ts";
import { boxesGeometry } from "../shape/chamfered.ts";
import { rodsGeometry } from "../shape/rods.ts";
import { springGeometry } from "../shape/spring.ts";
import { useGeometry, useRig, useScene } from "./context.ts";
import { Label } from "./Label.tsx";
import { Pick } from "./Pick.tsx";
import { Swinging } from "./Swinging.tsx";

export const Latch = memo(function Latch({ latch }: { readonly latch: LatchLayout | null }) {
  if (latch === null) return null;
  const onFlap = latch.boltOn === "flap";
  return (
    <>
      <On flap={!onFlap}>
        <Strike boxes={latch.strike} />
      </On>
      <On flap={onFlap}>
        <Bolt latch={latch} />
      </On>
    </>
  );
});

function On({ flap, children }: { readonly flap: boolean; readonly children: ReactNode }) {
  return flap ? <Swinging>{children}</Swinging> : children;
}

function Strike({ boxes }: { readonly boxes: readonly Box[] }) {
  const { look } = useScene();
  const strike = useGeometry(boxes, fineBoxes);
  return (
    <Pick part="latch">
      <mesh geometry={strike} material={look.steel} castShadow />
    </Pick>
  );
}

const fineBoxes = (boxes: readonly Box[]) => boxesGeometry(boxes, 0.0003);
/** Seen from near. */
const roundRod = (rod: Rod) => rodsGeometry([rod], 28);

function Bolt({ latch }: { readonly latch: LatchLayout }) {
  const { look } = useScene();
  const { bolt } = latch;
  const shaft = useGeometry(bolt, (one) => rodsGeometry([one.shaft, one.collar]));
  const guide = useGeometry(bolt.guide, roundRod);
  const coil = useGeometry(bolt.coil, roundRod);
  const yoke = useGeometry(bolt.yoke, fineBoxes);
  const spring = useGeometry(bolt.spring, ({ radius, length }) => springGeometry(radius, length, 0.0006));
  const [shaftGroup, setShaft] = useState<Group | null>(null);
  const [springMesh, setSpring] = useState<Mesh | null>(null);
  const rig = useMemo(
    () =>
      shaftGroup === null || springMesh === null
        ? null
        : {
            direction: bolt.direction,
            springLength: bolt.spring.length,
            shaft: shaftGroup,
            spring: springMesh,
          },
    [bolt, shaftGroup, springMesh],
  );
  useRig((all) => all.bolts, rig);
  return (
    <>
      <Pick part="latch">
        <group ref={setShaft}>
          <mesh geometry={shaft} material={look.brass} castShadow />
        </group>
        <mesh geometry={guide} material={look.steel} castShadow />
        <group position={[0, bolt.spring.foot, bolt.z]} rotation-x={bolt.direction === 1 ? 0 : Math.PI}>
          <mesh ref={setSpring} geometry={spring} material={look.steel} />
        </group>
      </Pick>
      <Pick part="solenoid">
        <mesh geometry={coil} material={look.copper} />
        <mesh geometry={yoke} material={look.darkSteel} />
      </Pick>
    </>
  );
}

/** Says in words that the coil is driven, beside the latch. `mouth`: the slot's above the floor, m. */
export const CoilSign = memo(function CoilSign({ mouth }: { readonly mouth: number }) {
  const { look } = useScene();
  const [group, setGroup] = useState<Group | null>(null);
  useRig((rig) => rig.coilOn, group);
  const { palette } = look;
  return (
    <group ref={setGroup}>
      <Label
        text="coil on"
        at={[0, mouth - 0.02, 0]}
        anchor={[-0.35, 1.4]}
        colour={palette.open}
        ground={palette.label}
        letters={12}
        strong
        ring={palette.open}
      />
    </group>
  );
});
