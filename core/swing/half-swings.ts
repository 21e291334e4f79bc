/**
 * The half swings from rest to rest so far, as far as they tell where the next one will end: each loses a like share of its
 * energy, so that the differences of the ways fall geometrically, and so, slowly, does the loss over the way's square.
 */
export class HalfSwings {
  /** Ways of the last three, the latest first, rad; 0 where there is none. */
  private last = 0;
  private before = 0;
  private first = 0;
  /** Loss over the way's square of the last two, J/rad². */
  private rate = 0;
  private rateBefore = 0;

  forget(): void {
    this.last = 0;
    this.before = 0;
    this.first = 0;
    this.rate = 0;
    this.rateBefore = 0;
  }

  add(way: number, loss: number): void {
    this.first = this.before;
    this.before = this.last;
    this.last = way;
    this.rateBefore = this.rate;
    this.rate = loss / (way * way);
  }

  /** Way of the next, rad; 0 where nothing tells. */
  nextWay(): number {
    const { last, before, first } = this;
    if (before === 0) return 0.9 * last;
    const fall = last - before;
    const next = first === 0 ? (last * last) / before : last + (fall * fall) / (before - first);
    return next > 0 && next < 1.2 * last ? next : 0.9 * last;
  }

  /** Loss of the next over that of the last, for a next way. */
  nextLossShare(way: number): number {
    const rate = this.rateBefore > 0 ? 2 - this.rateBefore / this.rate : 1;
    return (rate * way * way) / (this.last * this.last);
  }
}
