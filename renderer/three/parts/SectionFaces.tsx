/** Where the door is cut: hatched faces, each in the frame of what was cut. */
import { memo, useEffect, useMemo, useState } from "react";
import { Group, LineSegments, Mesh } from "three";
import type { BoltLayout } from "../layout/latch.ts";
import type { DoorLayout } from "../layout/layout.ts";
import { type CutFace, cutFaces } from "../layout/section.ts";
import type { Look } from "../look/look.ts";
import { cutGeometry, cutOutlines, facesByStuff } from "../shape/cut-faces.ts";
import { useRig, useScene, useShared, wholly } from "./context.ts";
import { Swinging } from "./Swinging.tsx";

interface SectionFacesProps {
  readonly layout: DoorLayout;
  readonly x: number;
}

export const SectionFaces = memo(function SectionFaces({ layout, x }: SectionFacesProps) {
  const faces = useShared(useMemo(() => cutFaces(layout, x), [layout, x]));
  const { latch } = layout;
  const bolt = latch === null ? null : <BoltFaces bolt={latch.bolt} faces={faces.bolt} x={x} />;
  const onFlap = latch?.boltOn === "flap";
  return (
    <>
      <Faces faces={faces.fixed} x={x} />
      {!onFlap && bolt}
      <Swinging>
        <Faces faces={faces.flap} x={x} />
        {onFlap && bolt}
      </Swinging>
    </>
  );
});

interface FacesProps {
  readonly faces: readonly CutFace[];
  readonly x: number;
}

const Faces = memo(function Faces({ faces, x }: FacesProps) {
  const { look } = useScene();
  const group = useFaces(faces, x, look);
  return <primitive object={group} />;
});

function BoltFaces({ bolt, faces, x }: FacesProps & { readonly bolt: BoltLayout }) {
  const [moving, setMoving] = useState<Group | null>(null);
  const [unused] = useState(() => new Group());
  const rig = useMemo(
    () =>
      moving === null
        ? null
        : { direction: bolt.direction, springLength: bolt.spring.length, shaft: moving, spring: unused },
    [moving, bolt, unused],
  );
  useRig((all) => all.bolts, rig);
  return (
    <group ref={setMoving}>
      <Faces faces={faces} x={x} />
    </group>
  );
}

function useFaces(faces: readonly CutFace[], x: number, look: Look): Group {
  const group = useMemo(() => {
    const made = new Group();
    for (const [stuff, some] of facesByStuff(faces))
      made.add(new Mesh(wholly(cutGeometry(some, x)), look.cut[stuff]));
    made.add(new LineSegments(wholly(cutOutlines(faces, x)), look.cutLine));
    return made;
  }, [faces, x, look]);
  useEffect(
    () => () => {
      for (const child of group.children) {
        if (child instanceof Mesh || child instanceof LineSegments) child.geometry.dispose();
      }
    },
    [group],
  );
  return group;
}
