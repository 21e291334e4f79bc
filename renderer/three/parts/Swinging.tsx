/** A frame that hangs on the hinge axis and turns with the flap. */
import { type ReactNode, useState } from "react";
import type { Group } from "three";
import { useRig, useScene } from "./context.ts";

export function Swinging({ children }: { readonly children: ReactNode }) {
  const { hingeHeight } = useScene();
  const [group, setGroup] = useState<Group | null>(null);
  useRig((rig) => rig.flaps, group);
  return (
    <group ref={setGroup} position-y={hingeHeight}>
      {children}
    </group>
  );
}
