/** Results as a builder reads them on paper: the review's values in the review's words. */
import type { Computed } from "../review/compute.ts";
import { resultNamed } from "../review/results.ts";
import { figureText, type Words } from "../review/words.ts";

/** What stands for a figure that a door does not have. */
export const NONE = "does not exist for this door";

/** A result by its name: what it is and its value in words. Throws a RangeError for a name there is not. */
export function resultRow(
  computed: Computed,
  name: string,
  w: Words,
): readonly [title: string, text: string] {
  const result = resultNamed(name);
  if (result === undefined)
    throw new RangeError(`Name of a result must be one of the review's; received "${name}"`);
  const title = result.title[0].toUpperCase() + result.title.slice(1);
  const value = result.value(computed);
  return [title, value === null ? NONE : figureText(value, result.unit, w)];
}
