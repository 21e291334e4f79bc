/** The pinned door's flap: an outline that swings by its own film. */
import { memo, useEffect, useMemo, useState } from "react";
import { DoubleSide, EdgesGeometry, type Group } from "three";
import type { DoorView } from "../../state/view.ts";
import { layoutDoor } from "../layout/layout.ts";
import { plateGeometry } from "../shape/plate.ts";
import { useRig, useScene } from "./context.ts";

const ORDER = 6;

export const Ghost = memo(function Ghost({ pinned }: { readonly pinned: DoorView }) {
  const { look } = useScene();
  const [group, setGroup] = useState<Group | null>(null);
  useRig((rig) => rig.ghosts, group);
  const layout = useMemo(() => layoutDoor(pinned.door, pinned.geometry), [pinned]);
  const shapes = useMemo(() => {
    const plate = plateGeometry(layout.plate);
    return { plate, edges: new EdgesGeometry(plate, 40) };
  }, [layout]);
  useEffect(
    () => () => {
      shapes.plate.dispose();
      shapes.edges.dispose();
    },
    [shapes],
  );
  const { ghost } = look.palette;
  return (
    <group ref={setGroup} position-y={layout.hingeHeight}>
      <mesh geometry={shapes.plate} renderOrder={ORDER}>
        <meshBasicMaterial color={ghost} transparent opacity={0.22} depthWrite={false} side={DoubleSide} />
      </mesh>
      <lineSegments geometry={shapes.edges} renderOrder={ORDER + 1}>
        <lineBasicMaterial color={ghost} transparent opacity={0.95} />
      </lineSegments>
    </group>
  );
});
