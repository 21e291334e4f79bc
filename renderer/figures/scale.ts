/** One unit for a whole axis or a whole map, and the numbers in it. */
import { fieldAt } from "../../core/door/schema.ts";
import type { UnitSystem } from "../state/view.ts";
import { figureText, keyText } from "./format.ts";

export interface Scale {
  readonly unit: string;
  /** The number in that unit of an SI value. */
  readonly of: (si: number) => number;
}

/** The unit that suits a value's size; `write` gives "12.3 mm". */
function scaleBy(write: (si: number) => string, sample: number): Scale {
  const size = sample === 0 ? 1 : sample;
  const [, number = "1", unit = ""] = /^([-−]?[\d.]+(?:e[-+]?\d+)?)\s*(.*)$/.exec(write(size)) ?? [];
  const factor = Number(number) / size;
  return { unit, of: (si) => si * factor };
}

/** Temperatures have a zero of their own. */
function temperature(system: UnitSystem): Scale {
  return system === "inch" ? { unit: "°F", of: (si) => si * 1.8 + 32 } : { unit: "°C", of: (si) => si };
}

/** For an input of the door. */
export function inputScale(path: string, sample: number, system: UnitSystem): Scale {
  const field = fieldAt(path);
  const dimension = field?.kind === "quantity" ? field.dimension : null;
  if (dimension === "temperature") return temperature(system);
  return scaleBy((si) => keyText(si, dimension, system, 12), sample);
}

/** For a result. */
export function resultScale(unit: string, sample: number, system: UnitSystem): Scale {
  if (unit === "degC") return temperature(system);
  return scaleBy((si) => figureText(si, unit, system, 12), sample);
}
