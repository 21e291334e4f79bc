/** Trade names for a magnet's remanence. */
import table from "../../assets/magnet-grades.json" with { type: "json" };

interface Grade {
  readonly name: string;
  readonly material: string;
  /** T. */
  readonly low: number;
  readonly high: number;
}

const GRADES: readonly Grade[] = table.grades.map(({ name, material, low, high }) => ({
  name,
  material,
  low: Number.parseFloat(low),
  high: Number.parseFloat(high),
}));

/** The first grade whose range holds a remanence, T: "N35 (NdFeB)"; `null` where none does. */
export function gradeFor(remanence: number): string | null {
  const grade = GRADES.find(({ low, high }) => remanence >= low && remanence <= high);
  return grade === undefined ? null : `${grade.name} (${grade.material})`;
}
