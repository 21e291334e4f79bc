/** Daylight from both sides of the wall; the side looked at has the sun and its shadows. */
import { memo, useMemo } from "react";
import { Object3D } from "three";
import type { Box } from "../layout/solids.ts";
import { useScene } from "./context.ts";

const SHADOW_PIXELS = 1024;

interface LightProps {
  /** Of the wall, m. */
  readonly bounds: Box;
  /** The camera is outdoors. */
  readonly outdoors: boolean;
  readonly shadows: boolean;
}

export const Light = memo(function Light({ bounds, outdoors, shadows }: LightProps) {
  const { look } = useScene();
  const dim = look.palette.theme === "dark" ? 0.72 : 1;
  const side = outdoors ? 1 : -1;
  const height = bounds.max[1];
  const reach = Math.max(bounds.max[0], height) * 1.25;
  const target = useMemo(() => new Object3D(), []);
  return (
    <>
      <hemisphereLight args={["#fffaf2", "#c4b8a6", 2 * dim]} />
      <primitive object={target} position={[0, height * 0.4, 0]} />
      <directionalLight
        target={target}
        position={[-0.9 * reach, height * 0.4 + 1.7 * reach, side * 1.5 * reach]}
        intensity={2.2 * dim}
        color="#fff3df"
        castShadow={shadows}
        shadow-mapSize-width={SHADOW_PIXELS}
        shadow-mapSize-height={SHADOW_PIXELS}
        shadow-bias={-0.0006}
        shadow-normalBias={0.004}
        shadow-radius={3}
      >
        <orthographicCamera attach="shadow-camera" args={[-reach, reach, reach, -reach, 0.05, 6 * reach]} />
      </directionalLight>
      <directionalLight position={[1.4, 1, -1.2 * side]} intensity={0.6 * dim} color="#e8eef5" />
    </>
  );
});
