/** The piece of wall, the floor on either side, the frame. */

import { memo, useState } from "react";
import { BufferGeometry, type Mesh } from "three";
import type { FrameLayout } from "../layout/frame.ts";
import type { Box, Rod } from "../layout/solids.ts";
import type { WallLayout } from "../layout/wall.ts";
import { boxesGeometry } from "../shape/chamfered.ts";
import { layersGeometry } from "../shape/layers.ts";
import { rodsGeometry } from "../shape/rods.ts";
import { useGeometry, useRig, useScene } from "./context.ts";
import { Pick } from "./Pick.tsx";

interface WallProps {
  readonly wall: WallLayout;
}

export const Wall = memo(function Wall({ wall }: WallProps) {
  const { look } = useScene();
  const plaster = useGeometry(wall.plaster, layersGeometry);
  const core = useGeometry(wall.core, layersGeometry);
  const cladding = useGeometry(wall.cladding, layersGeometry);
  const skirting = useGeometry(wall.skirting, (boxes) => boxesGeometry(boxes, 0.004));
  return (
    <>
      <mesh geometry={plaster} material={look.plaster} receiveShadow />
      <mesh geometry={core} material={look.core} castShadow />
      <mesh geometry={cladding} material={look.cladding} receiveShadow />
      <mesh geometry={skirting} material={look.skirting} receiveShadow />
    </>
  );
});

export const Floor = memo(function Floor({ wall }: WallProps) {
  const { look } = useScene();
  const boards = useGeometry(wall.indoorFloor, (floor) => boxesGeometry([floor], 0));
  const paving = useGeometry(wall.outdoorFloor, (floor) => boxesGeometry([floor], 0));
  const slab = useGeometry(wall.slab, (one) => boxesGeometry([one], 0.003));
  return (
    <>
      <mesh geometry={boards} material={look.boards} receiveShadow />
      <mesh geometry={paving} material={look.paving} receiveShadow />
      <mesh geometry={slab} material={look.slab} />
    </>
  );
});

export const Frame = memo(function Frame({ frame }: { readonly frame: FrameLayout }) {
  const { look } = useScene();
  const trim = useGeometry(frame, ({ boards, casing, sill, rail }) =>
    boxesGeometry([...boards, ...casing, sill, ...(rail === null ? [] : [rail])], 0.0018),
  );
  return (
    <Pick part="opening">
      <mesh geometry={trim} material={look.trim} castShadow receiveShadow />
    </Pick>
  );
});

/** Closes the latch's pocket on the indoor side. */
export const Cover = memo(function Cover({ cover: box }: { readonly cover: Box | null }) {
  const { look } = useScene();
  const cover = useGeometry(box, (one) => boxesGeometry(one === null ? [] : [one], 0.0008));
  const screws = useGeometry(box, (one) =>
    one === null ? new BufferGeometry() : rodsGeometry(screwsOf(one)),
  );
  if (box === null) return null;
  return (
    <Pick part="latch">
      <mesh geometry={cover} material={look.steel} />
      <mesh geometry={screws} material={look.darkSteel} />
    </Pick>
  );
});

function screwsOf({ min, max }: Box): Rod[] {
  const inset = 0.005;
  const places = [min[0] + inset, max[0] - inset].flatMap((x) =>
    [min[1] + inset, max[1] - inset].map((y) => [x, y, min[2]] as const),
  );
  return places.map((centre) => ({ axis: "z", centre, radius: 0.0022, length: 0.0016 }));
}

/** Lit while the coil is driven; its bezel stays. */
export const Lamp = memo(function Lamp({ lamps }: { readonly lamps: readonly Rod[] }) {
  const { look } = useScene();
  const bezel = useGeometry(lamps, (rods) =>
    rodsGeometry(rods.map((lamp) => ({ ...lamp, radius: lamp.radius * 1.5, length: lamp.length * 0.7 }))),
  );
  const lens = useGeometry(lamps, (rods) => rodsGeometry(rods));
  const [on, setOn] = useState<Mesh | null>(null);
  const [off, setOff] = useState<Mesh | null>(null);
  useRig((rig) => rig.coilOn, on);
  useRig((rig) => rig.coilOff, off);
  return (
    <Pick part="solenoid">
      <mesh geometry={bezel} material={look.darkSteel} />
      <mesh ref={setOn} geometry={lens} material={look.lampOn} />
      <mesh ref={setOff} geometry={lens} material={look.lampOff} />
    </Pick>
  );
});
