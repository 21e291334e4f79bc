/** The animal of the passage, walking through. */
import { memo, useEffect, useMemo, useState } from "react";
import type { BufferGeometry, Group, Object3D } from "three";
import type { Animal as DoorAnimal } from "../../../core/door/door.ts";
import { FRAME, OUTDOOR_FACE } from "../layout/assumptions.ts";
import type { Look } from "../look/look.ts";
import { type AnimalBody, animalBody, type Limb } from "../motion/animal-body.ts";
import { newGait } from "../motion/gait.ts";
import type { AnimalRig } from "../motion/rig.ts";
import { bodyGeometry, faceGeometry, limbGeometry } from "../shape/animal-shapes.ts";
import { useRig, useScene, wholly } from "./context.ts";
import { Pick } from "./Pick.tsx";

/** Drawn before the clear flap, so that it is seen through it. */
const ORDER = 1;

interface AnimalProps {
  readonly animal: DoorAnimal;
  /** Top of the sill above the floor, m. */
  readonly sill: number;
  /** How far the floor goes from the wall, m. */
  readonly floor: number;
}

export const Animal = memo(function Animal({ animal, sill, floor }: AnimalProps) {
  const { look, cut } = useScene();
  const body = useMemo(() => animalBody(animal), [animal]);
  const [root, setRoot] = useState<Group | null>(null);
  const [joints, setJoints] = useState<readonly Object3D[]>([]);
  const depth = OUTDOOR_FACE + floor;
  const rig = useMemo<AnimalRig | null>(() => {
    if (root === null || joints.length === 0) return null;
    const step = { half: OUTDOOR_FACE + FRAME.casingThickness + FRAME.nosing, height: sill };
    return { body, gait: newGait(body), step, floorDepth: depth, root, joints, fade: fader(look, cut === 0) };
  }, [root, joints, body, sill, depth, look, cut]);
  useRig((all) => all.animals, rig);
  return (
    <Pick part="animals">
      <group ref={setRoot} visible={false}>
        <Trunk body={body} />
        <Limbs body={body} onJoints={setJoints} />
      </group>
    </Pick>
  );
});

/** In a section the animal is a shadow of itself: the latch is what is looked at. */
const IN_SECTION = 0.16;

/**
 * The animal comes and goes grain by grain: half seen, a body must not show its inside. The materials change only at the
 * ends of that, because the grain is dear to draw.
 */
function fader(look: Look, section: boolean): (presence: number) => void {
  const coats = [look.coat, look.coatDark, look.collar];
  const most = section ? IN_SECTION : 1;
  let grainy: boolean | null = null;
  return (presence) => {
    const grain = presence < 1 && !section;
    for (let i = 0; i < coats.length; i++) {
      const coat = coats[i];
      coat.opacity = most * presence;
      if (grain === grainy) continue;
      coat.alphaHash = grain;
      coat.transparent = section;
      coat.depthWrite = !section;
      coat.needsUpdate = true;
    }
    grainy = grain;
  };
}

function useMade(make: () => BufferGeometry, body: AnimalBody | Limb): BufferGeometry {
  // biome-ignore lint/correctness/useExhaustiveDependencies: `make` reads nothing but the body.
  const made = useMemo(() => wholly(make()), [body]);
  useEffect(() => () => made.dispose(), [made]);
  return made;
}

function Trunk({ body }: { readonly body: AnimalBody }) {
  const { look } = useScene();
  const coat = useMade(() => bodyGeometry(body), body);
  const face = useMade(() => faceGeometry(body), body);
  return (
    <>
      <mesh geometry={coat} material={look.coat} castShadow renderOrder={ORDER} />
      <mesh geometry={face} material={look.coatDark} renderOrder={ORDER} />
      <Collar body={body} />
    </>
  );
}

function Collar({ body }: { readonly body: AnimalBody }) {
  const { look } = useScene();
  const { torso, head } = body;
  const ring = Math.min(head.radius * 0.9, torso.halfDepth * 0.8) * 1.04;
  const y = (torso.height + torso.halfDepth - ring + head.y) / 2;
  const z = (torso.front - torso.halfDepth * 0.5 + head.z) / 2;
  return (
    <group position={[0, y, z]} rotation-x={0.15}>
      <mesh material={look.collar} renderOrder={ORDER} scale={[0.93, 1, 1]}>
        <torusGeometry args={[ring, ring * 0.11, 8, 24]} />
      </mesh>
      <mesh material={look.brass} position={[0, -ring * 1.22, ring * 0.1]} rotation-x={Math.PI / 2}>
        <cylinderGeometry args={[ring * 0.2, ring * 0.2, ring * 0.06, 16]} />
      </mesh>
    </group>
  );
}

interface LimbsProps {
  readonly body: AnimalBody;
  readonly onJoints: (joints: readonly Object3D[]) => void;
}

function Limbs({ body, onJoints }: LimbsProps) {
  const [group, setGroup] = useState<Group | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another body has other limbs in the same group.
  useEffect(() => {
    if (group !== null) onJoints(group.children.flatMap((hip) => [hip, hip.children[1]]));
  }, [group, body, onJoints]);
  return (
    <group ref={setGroup}>
      {body.limbs.map((limb) => (
        <Leg key={limb.phase} limb={limb} />
      ))}
    </group>
  );
}

/** The hip's group, in it the thigh and the knee's group, in that the shin. */
function Leg({ limb }: { readonly limb: Limb }) {
  const { look } = useScene();
  const upper = useMade(() => limbGeometry(limb, "upper"), limb);
  const lower = useMade(() => limbGeometry(limb, "lower"), limb);
  return (
    <group position={[limb.x, limb.y, limb.z]}>
      <mesh geometry={upper} material={look.coat} castShadow renderOrder={ORDER} />
      <group position={[0, -limb.upper, 0]}>
        <mesh geometry={lower} material={look.coat} castShadow renderOrder={ORDER} />
      </group>
    </group>
  );
}
