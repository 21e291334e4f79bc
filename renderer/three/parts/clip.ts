/** Cutting the scene across the hinge: what is built is cut, what is written beside it stays whole. */
import { LineSegments, type Material, Mesh, type Object3D, Plane, Vector3 } from "three";

/** `userData` of what the cut leaves whole. */
export const WHOLE = { whole: true } as const;

/** The plane that takes away everything below x. */
export function cutPlanes(x: number | null): Plane[] | null {
  return x === null ? null : [new Plane(new Vector3(1, 0, 0), -x)];
}

/** Gives every material in the scene the same planes. Sprites are words and stay whole. */
export function clipScene(scene: Object3D, planes: Plane[] | null): void {
  scene.traverse((object) => {
    if (!(object instanceof Mesh || object instanceof LineSegments) || object.userData.whole === true) return;
    const { material } = object as { material: Material | Material[] };
    for (const one of Array.isArray(material) ? material : [material]) one.clippingPlanes = planes;
  });
}
