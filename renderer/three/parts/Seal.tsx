/** The brush beside the flap. */
import { memo } from "react";
import { BufferGeometry } from "three";
import type { SealLayout } from "../layout/flap.ts";
import { brushGeometry } from "../shape/brush.ts";
import { useGeometry, useScene } from "./context.ts";
import { Pick } from "./Pick.tsx";

export const Seal = memo(function Seal({ seal }: { readonly seal: SealLayout | null }) {
  const { look } = useScene();
  const brush = useGeometry(seal, (one) => (one === null ? new BufferGeometry() : brushGeometry(one)));
  if (seal === null) return null;
  return (
    <Pick part="seal">
      <mesh geometry={brush} material={look.bristles} />
    </Pick>
  );
});
