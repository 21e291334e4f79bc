/**
 * Flap materials by name. The table is `assets/materials.json`; densities are handbook values, from memory.
 */
import table from "../../assets/materials.json" with { type: "json" };

export interface Material {
  readonly name: string;
  /** kg/m³. */
  readonly density: number;
}

export const MATERIALS: readonly Material[] = table.materials;

/** The material of that name, capitals aside; undefined where it is not in the table. */
export function materialNamed(name: string): Material | undefined {
  const wanted = name.trim().toLowerCase();
  return MATERIALS.find((material) => material.name.toLowerCase() === wanted);
}
