/** Stretches of time that end other than shut out, in falling order as they are found; flat arrays, used again and again. */

export const CAUGHT = 0;
export const STUCK = 1;
export const SHUT_OUT = 2;
export type OutcomeCode = typeof CAUGHT | typeof STUCK | typeof SHUT_OUT;

export class Stretches {
  count = 0;
  from = new Float64Array(32);
  to = new Float64Array(32);
  code = new Uint8Array(32);

  clear(): void {
    this.count = 0;
  }

  /** Adds [from, to), which lies before all that was added; shut out is what is left out. Touching stretches of one outcome are one. */
  addBefore(from: number, to: number, code: OutcomeCode): void {
    if (!(to > from) || code === SHUT_OUT) return;
    const last = this.count - 1;
    if (last >= 0 && this.code[last] === code && this.from[last] <= to) {
      this.from[last] = from;
      return;
    }
    if (this.count === this.from.length) this.grow();
    this.from[this.count] = from;
    this.to[this.count] = to;
    this.code[this.count] = code;
    this.count++;
  }

  private grow(): void {
    const longer = (old: Float64Array) => {
      const array = new Float64Array(old.length * 2);
      array.set(old);
      return array;
    };
    this.from = longer(this.from);
    this.to = longer(this.to);
    const code = new Uint8Array(this.code.length * 2);
    code.set(this.code);
    this.code = code;
  }

  /** Outcome at a moment. */
  at(time: number): OutcomeCode {
    for (let i = 0; i < this.count; i++) {
      if (time >= this.from[i] && time < this.to[i]) return this.code[i] as OutcomeCode;
    }
    return SHUT_OUT;
  }
}
