/**
 * The part of mathjs's `Unit` that `units.ts` uses. mathjs exports the factory but its own types leave it out.
 */
import "mathjs";

declare module "mathjs" {
  /** One factor of a parsed unit, such as the `mm^2` of "N/mm^2". */
  interface ParsedFactor {
    readonly unit: {
      readonly name: string;
      /** SI value of one unit; degF and degR carry a fraction. */
      readonly value: number | { readonly n: number; readonly d: number };
      readonly offset: number;
    };
    readonly prefix: { readonly value: number };
    readonly power: number;
  }

  interface UnitClass {
    parse(text: string): {
      readonly units: readonly ParsedFactor[];
      /** Exponents of mass, length, time, current, temperature, luminous intensity, amount, angle, bit. */
      readonly dimensions: readonly number[];
    };
    createUnitSingle(
      name: string,
      options: { definition: string; prefixes?: "short" | "long" | "none"; aliases?: readonly string[] },
    ): unknown;
    deleteUnit(name: string): void;
  }

  export function createUnitClass(dependencies: Record<string, unknown>): UnitClass;
}
