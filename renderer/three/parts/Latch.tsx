/** Strike, bolt and solenoid, each in the frame of what it is fixed to. */
import { type ReactNode, useMemo, useState } from "react";
import { BufferGeometry, type Group, type Mesh } from "three";
import type { LatchLayout } from "../layout/latch.ts";
import { latchPlace } from "../layout/section.ts";
import { boxesGeometry } from "../shape/chamfered.ts";
import { rodsGeometry } from "../shape/rods.ts";
import { springGeometry } from "../shape/spring.ts";
import { useGeometry, useRig, useScene } from "./context.ts";
import { Label } from "./Label.tsx";
import { Pick } from "./Pick.tsx";
import { Swinging } from "./Swinging.tsx";

export function Latch() {
  const { layout } = useScene();
  const { latch } = layout;
  if (latch === null) return null;
  const onFlap = latch.boltOn === "flap";
  return (
    <>
      <On flap={!onFlap}>
        <Strike />
      </On>
      <On flap={onFlap}>
        <Bolt latch={latch} />
      </On>
    </>
  );
}

function On({ flap, children }: { readonly flap: boolean; readonly children: ReactNode }) {
  return flap ? <Swinging>{children}</Swinging> : children;
}

function Strike() {
  const { look } = useScene();
  const strike = useGeometry(({ latch }) => boxesGeometry(latch?.strike ?? [], 0.0003));
  return (
    <Pick part="latch">
      <mesh geometry={strike} material={look.steel} castShadow />
    </Pick>
  );
}

function Bolt({ latch }: { readonly latch: LatchLayout }) {
  const { look } = useScene();
  const { bolt } = latch;
  const shaft = useGeometry((l) =>
    l.latch === null ? new BufferGeometry() : rodsGeometry([l.latch.bolt.shaft, l.latch.bolt.collar]),
  );
  const guide = useGeometry((l) =>
    l.latch === null ? new BufferGeometry() : rodsGeometry([l.latch.bolt.guide], 28),
  );
  const coil = useGeometry((l) =>
    l.latch === null ? new BufferGeometry() : rodsGeometry([l.latch.bolt.coil], 28),
  );
  const yoke = useGeometry((l) => boxesGeometry(l.latch?.bolt.yoke ?? [], 0.0003));
  const spring = useGeometry((l) =>
    l.latch === null
      ? new BufferGeometry()
      : springGeometry(l.latch.bolt.spring.radius, l.latch.bolt.spring.length, 0.0006),
  );
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

/** Says in words that the coil is driven, beside the latch. */
export function CoilSign() {
  const { layout, look } = useScene();
  const [group, setGroup] = useState<Group | null>(null);
  useRig((rig) => rig.coilOn, group);
  const { latch } = layout;
  if (latch === null) return null;
  const { mouth } = latchPlace(layout, latch);
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
}
