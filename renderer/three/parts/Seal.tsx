/** The brush beside the flap. */
import { BufferGeometry } from "three";
import { brushGeometry } from "../shape/brush.ts";
import { useGeometry, useScene } from "./context.ts";
import { Pick } from "./Pick.tsx";

export function Seal() {
  const { look, layout } = useScene();
  const brush = useGeometry(({ seal }) => (seal === null ? new BufferGeometry() : brushGeometry(seal)));
  if (layout.seal === null) return null;
  return (
    <Pick part="seal">
      <mesh geometry={brush} material={look.bristles} />
    </Pick>
  );
}
