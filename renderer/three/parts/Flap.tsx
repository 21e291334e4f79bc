/** The flap with what is fixed to it, and the hinge it hangs on. */
import { memo, useEffect, useMemo } from "react";
import type { PlateLayout } from "../layout/flap.ts";
import type { HingeLayout } from "../layout/hinge.ts";
import type { Box } from "../layout/solids.ts";
import { disposeFlapLook, flapLook, isClear } from "../look/flap-look.ts";
import { boxesGeometry } from "../shape/chamfered.ts";
import { plateGeometry } from "../shape/plate.ts";
import { rodsGeometry } from "../shape/rods.ts";
import { useGeometry, useScene } from "./context.ts";
import { Pick } from "./Pick.tsx";
import { Swinging } from "./Swinging.tsx";

/** Over all that is opaque, under the labels. */
const CLEAR_ORDER = 2;

interface FlapProps {
  readonly plate: PlateLayout;
  readonly weights: readonly Box[];
  readonly through: boolean;
}

export const Flap = memo(function Flap({ plate: layout, weights: boxes, through }: FlapProps) {
  const { look } = useScene();
  const { material } = layout;
  const own = useMemo(() => flapLook(material, look.palette, look.fine), [material, look]);
  useEffect(() => () => disposeFlapLook(own), [own]);
  useEffect(() => seeThrough(own.face, through && !isClear(material)), [own, through, material]);
  const faces = useMemo(() => [own.face, own.edge], [own]);
  const plate = useGeometry(layout, plateGeometry);
  const weights = useGeometry(boxes, (all) => boxesGeometry(all, 0.0012));
  return (
    <Swinging>
      <Pick part="flap">
        <mesh geometry={plate} material={faces} castShadow={!isClear(material)} renderOrder={CLEAR_ORDER} />
        {boxes.length > 0 && <mesh geometry={weights} material={look.darkSteel} castShadow />}
      </Pick>
    </Swinging>
  );
});

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

export const Hinge = memo(function Hinge({ hinge }: { readonly hinge: HingeLayout }) {
  const { look } = useScene();
  const fixed = useGeometry(hinge, ({ pin, fixedKnuckles }) => rodsGeometry([pin, ...fixedKnuckles]));
  const turning = useGeometry(hinge.flapKnuckles, (rods) => rodsGeometry(rods));
  const leaves = useGeometry(hinge.leaves, (boxes) => boxesGeometry(boxes, 0.0004));
  return (
    <Pick part="hinge">
      <mesh geometry={fixed} material={look.steel} castShadow />
      <Swinging>
        <mesh geometry={turning} material={look.steel} />
        <mesh geometry={leaves} material={look.steel} castShadow />
      </Swinging>
    </Pick>
  );
});
