/** A settle time of the study with its error, for the eye. */

export interface SettleWords {
  readonly time: string;
  readonly error: string;
}

/** An error is told to a hundredth of a second, upwards; `null` is never, or no error to tell. */
export function settleWords(time: number | null, error: number | null): SettleWords {
  if (time === null) return { time: "never", error: "" };
  if (error === null) return { time: `${time.toFixed(2)} s`, error: "" };
  return { time: time.toFixed(2), error: `± ${(Math.ceil(100 * error - 1e-9) / 100).toFixed(2)} s` };
}
