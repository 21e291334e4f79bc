/** The flap with what is fixed to it, and the hinge it hangs on. */
import { useEffect, useMemo } from "react";
import { disposeFlapLook, flapLook, isClear } from "../look/flap-look.ts";
import { boxesGeometry } from "../shape/chamfered.ts";
import { plateGeometry } from "../shape/plate.ts";
import { rodsGeometry } from "../shape/rods.ts";
import { useGeometry, useScene } from "./context.ts";
import { Pick } from "./Pick.tsx";
import { Swinging } from "./Swinging.tsx";

/** Over all that is opaque, under the labels. */
const CLEAR_ORDER = 2;

export function Flap({ through }: { readonly through: boolean }) {
  const { look, layout } = useScene();
  const { material } = layout.plate;
  const own = useMemo(() => flapLook(material, look.palette, look.fine), [material, look]);
  useEffect(() => () => disposeFlapLook(own), [own]);
  useEffect(() => seeThrough(own.face, through && !isClear(material)), [own, through, material]);
  const plate = useGeometry((l) => plateGeometry(l.plate));
  const weights = useGeometry((l) => boxesGeometry(l.weights, 0.0012));
  return (
    <Swinging>
      <Pick part="flap">
        <mesh
          geometry={plate}
          material={[own.face, own.edge]}
          castShadow={!isClear(material)}
          renderOrder={CLEAR_ORDER}
        />
        {layout.weights.length > 0 && <mesh geometry={weights} material={look.darkSteel} castShadow />}
      </Pick>
    </Swinging>
  );
}

/** Makes an opaque face let things shine through, until undone. */
function seeThrough(
  face: { transparent: boolean; opacity: number; depthWrite: boolean; needsUpdate: boolean },
  on: boolean,
) {
  if (!on) return;
  Object.assign(face, { transparent: true, opacity: 0.35, depthWrite: false, needsUpdate: true });
  return () => {
    Object.assign(face, { transparent: false, opacity: 1, depthWrite: true, needsUpdate: true });
  };
}

export function Hinge() {
  const { look } = useScene();
  const fixed = useGeometry(({ hinge }) => rodsGeometry([hinge.pin, ...hinge.fixedKnuckles]));
  const turning = useGeometry(({ hinge }) => rodsGeometry(hinge.flapKnuckles));
  const leaves = useGeometry(({ hinge }) => boxesGeometry(hinge.leaves, 0.0004));
  return (
    <Pick part="hinge">
      <mesh geometry={fixed} material={look.steel} castShadow />
      <Swinging>
        <mesh geometry={turning} material={look.steel} />
        <mesh geometry={leaves} material={look.steel} castShadow />
      </Swinging>
    </Pick>
  );
}
