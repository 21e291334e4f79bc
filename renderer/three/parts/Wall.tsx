/** The piece of wall, the floor on either side, the frame. */

import { useState } from "react";
import type { Mesh } from "three";
import type { Box, Rod } from "../layout/solids.ts";
import { boxesGeometry } from "../shape/chamfered.ts";
import { layersGeometry } from "../shape/layers.ts";
import { rodsGeometry } from "../shape/rods.ts";
import { useGeometry, useRig, useScene } from "./context.ts";
import { Pick } from "./Pick.tsx";

export function Wall() {
  const { look } = useScene();
  const plaster = useGeometry(({ wall }) => layersGeometry(wall.plaster));
  const core = useGeometry(({ wall }) => layersGeometry(wall.core));
  const cladding = useGeometry(({ wall }) => layersGeometry(wall.cladding));
  const skirting = useGeometry(({ wall }) => boxesGeometry(wall.skirting, 0.004));
  return (
    <>
      <mesh geometry={plaster} material={look.plaster} receiveShadow />
      <mesh geometry={core} material={look.core} castShadow />
      <mesh geometry={cladding} material={look.cladding} receiveShadow />
      <mesh geometry={skirting} material={look.skirting} receiveShadow />
    </>
  );
}

export function Floor() {
  const { look } = useScene();
  const boards = useGeometry(({ wall }) => boxesGeometry([wall.indoorFloor], 0));
  const paving = useGeometry(({ wall }) => boxesGeometry([wall.outdoorFloor], 0));
  const slab = useGeometry(({ wall }) => boxesGeometry([wall.slab], 0.003));
  return (
    <>
      <mesh geometry={boards} material={look.boards} receiveShadow />
      <mesh geometry={paving} material={look.paving} receiveShadow />
      <mesh geometry={slab} material={look.slab} />
    </>
  );
}

export function Frame() {
  const { look } = useScene();
  const trim = useGeometry(({ frame }) => {
    const rail = frame.rail === null ? [] : [frame.rail];
    return boxesGeometry([...frame.boards, ...frame.casing, frame.sill, ...rail], 0.0018);
  });
  return (
    <Pick part="opening">
      <mesh geometry={trim} material={look.trim} castShadow receiveShadow />
    </Pick>
  );
}

/** Closes the latch's pocket on the indoor side. */
export function Cover() {
  const { look, layout } = useScene();
  const cover = useGeometry(({ wall }) => boxesGeometry(wall.cover === null ? [] : [wall.cover], 0.0008));
  const screws = useGeometry(({ wall }) => rodsGeometry(wall.cover === null ? [] : screwsOf(wall.cover)));
  if (layout.wall.cover === null) return null;
  return (
    <Pick part="latch">
      <mesh geometry={cover} material={look.steel} />
      <mesh geometry={screws} material={look.darkSteel} />
    </Pick>
  );
}

function screwsOf({ min, max }: Box): Rod[] {
  const inset = 0.005;
  const places = [min[0] + inset, max[0] - inset].flatMap((x) =>
    [min[1] + inset, max[1] - inset].map((y) => [x, y, min[2]] as const),
  );
  return places.map((centre) => ({ axis: "z", centre, radius: 0.0022, length: 0.0016 }));
}

/** Lit while the coil is driven; its bezel stays. */
export function Lamp() {
  const { look } = useScene();
  const bezel = useGeometry(({ frame }) =>
    rodsGeometry(
      frame.lamps.map((lamp) => ({ ...lamp, radius: lamp.radius * 1.5, length: lamp.length * 0.7 })),
    ),
  );
  const lens = useGeometry(({ frame }) => rodsGeometry(frame.lamps));
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
}
