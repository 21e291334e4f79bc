/**
 * The outcome of the relatch for every moment at which the bolt's tip may reach the slot's mouth, exactly, from one swing
 * (model, section 4). The hold, the timer and the coil only move that moment.
 *
 * While the flap is inside the slot, the bolt catches it unless it leaves before the bolt is engaged; then the bolt rides
 * from the slot's edge, and one ride tells for all those moments. A bolt that comes up on the edge rides from where the
 * flap then is. Along one passage such rides are ordered: the paths of one equation of motion do not cross in the plane
 * of angle and speed, and the later the bolt comes up, the less the flap was braked, so the faster it is wherever it
 * gets. Rides from the two ends of a passage that went the same way therefore speak for all between them, and only
 * between rides that went different ways is there anything to look for.
 *
 * The same order holds from passage to passage: of two in one direction the earlier is the faster. So the swing is
 * read from its end, and in each direction reading stops at the first passage that is too fast for the bolt even after
 * it rode all the way.
 *
 * The one thing that could be missed: of two rides that both stop on the same stretch of edge one between may start
 * again, where the magnets' pull has a dip within the width of the edge.
 */
import type { RideSystem } from "../passage/relatch.ts";
import type { Motion } from "../swing/motion.ts";
import type { SwingSystem } from "../swing/system.ts";
import { staticEnergy } from "../swing/torque.ts";
import type { FlapState, Trace } from "../swing/trace.ts";
import { FirmRide } from "./firm-ride.ts";
import { BLOCK_EDGE, CAPTURE_EDGE, INSIDE, Marks, RIDING, TURN } from "./marks.ts";
import { RideBounds } from "./ride-bounds.ts";
import { RideWatch, wayOf } from "./ride-watch.ts";
import { CAUGHT, type OutcomeCode, SHUT_OUT, Stretches } from "./stretches.ts";

/** How far past an edge of the slot a ride from that edge starts, rad: far below any angle that matters, far above rounding. */
const PAST_EDGE = 1e-12;

/** Between two ways to one end there is seldom a third end; it is looked for to this many times the sharpness. */
const SAME_END = 8;
/** After so many secants a search goes on by halving. */
const SECANTS = 8;

export class MouthOutcomes {
  /** The result of the last `find`. */
  readonly stretches = new Stretches();
  /** Rides computed by the last `find`: its work count. */
  rides = 0;
  private readonly marks = new Marks();
  private readonly watch: RideWatch;
  private readonly firmRide: FirmRide;
  /** Of the last ride: its way, and whether the flap was too fast for the bolt from the start. */
  private way = 0;
  private direct = false;
  private readonly state: FlapState = { time: 0, angle: 0, speed: 0 };
  private trace: Trace;
  private free: SwingSystem | null = null;
  private ride: RideSystem | null = null;
  private sharp = 0;
  /** Per direction, − and +: on earlier passages every ride is shut out; and no bolt is fast enough to catch in passing. */
  private readonly fast = [false, false];
  private readonly done = [false, false];
  /** The ride from the edge that the flap left last: its mark and outcome. */
  private exitMark = -1;
  private exitOutcome: OutcomeCode = SHUT_OUT;
  /** Of the present door, where its rides can be told early. */
  private bounds: RideBounds | null = null;
  private readonly ownBounds = new RideBounds();
  /** Per direction the piece from which on all is caught. */
  private readonly calm = [0, 0];
  /** Whether the last visit read was one straight passage too short for the bolt. */
  private fleeting = false;

  constructor(trace: Trace, motion: Motion, firmRide = new FirmRide(motion)) {
    this.trace = trace;
    this.watch = new RideWatch(motion);
    this.firmRide = firmRide;
  }

  /**
   * Reads the swing in the trace. Where an outcome changes along a riding passage, the moment is found to `sharp` s;
   * what is in doubt counts as the worse of the two.
   */
  find(free: SwingSystem, ride: RideSystem, sharp: number): Stretches {
    const { stretches, marks, trace } = this;
    this.free = free;
    this.ride = ride;
    this.sharp = sharp;
    this.rides = 0;
    this.fleeting = false;
    this.fast.fill(false);
    this.done.fill(false);
    this.exitMark = -1;
    stretches.clear();
    marks.scan(trace, ride.latch);
    this.bounds = this.ownBounds.find(ride) ? this.ownBounds : null;
    this.afterEnd(ride);
    let piece = this.beforeCalm();
    while (piece >= 0 && !(this.done[0] && this.done[1])) {
      const zone = marks.zone(piece);
      if (zone === INSIDE) piece = this.visit(piece, ride);
      else {
        if (zone === RIDING) this.riding(piece);
        piece--;
      }
    }
    return stretches;
  }

  /** Finds from where on all is caught, counts that in and returns the piece before. */
  private beforeCalm(): number {
    const { marks, stretches, trace, calm, bounds } = this;
    const last = marks.count - 1;
    calm[0] = last;
    calm[1] = last;
    if (bounds === null) return last - 1;
    if (bounds.neverSticks) this.calmByLegs(last);
    else this.calmByEnergy(bounds, last);
    let from = Math.max(calm[0], calm[1]);
    while (from < last && !marks.onEdge(from)) from++;
    if (from < last) stretches.addBefore(this.timeOf(from), trace.endTime, CAUGHT);
    return from - 1;
  }

  /**
   * Where no ride can stop on the edge, rides end caught or shut out, and the faster the sooner shut out. Of all the states
   * of one leg of the swing the turn at its end is the fastest in this sense; so where a bolt coming up at that turn is
   * caught, it is in this leg and in all later ones of that direction.
   */
  private calmByLegs(last: number): void {
    const { marks, calm } = this;
    for (let mark = 1, legStart = 0; mark <= last; mark++) {
      const kind = marks.kind(mark);
      if (kind !== TURN && mark !== last) continue;
      const side = marks.direction(mark - 1) > 0 ? 1 : 0;
      if (calm[side] === last && marks.onEdge(mark)) {
        this.stateAt(mark, 0);
        if (mark === last) this.state.speed = 0;
        if (this.rideOn() === CAUGHT) calm[side] = legStart;
      }
      legStart = mark;
      if (calm[0] < last && calm[1] < last) break;
    }
  }

  /** Energy only falls: from the first turn with so little that every ride is caught, all are. */
  private calmByEnergy(bounds: RideBounds, last: number): void {
    const { marks, calm, free, ride } = this;
    for (let mark = 1; mark < last; mark++) {
      if (marks.kind(mark) !== TURN) continue;
      const angle = marks.angle(mark);
      if (bounds.isCalm(ride as RideSystem, angle, staticEnergy(free as SwingSystem, angle))) {
        calm[0] = mark;
        calm[1] = mark;
        return;
      }
    }
  }

  /** Whether a piece belongs to a leg after which all is caught. */
  private isCalm(piece: number): boolean {
    return piece >= this.calm[this.side(piece)];
  }

  /** At rest nothing changes any more. */
  private afterEnd(ride: RideSystem): void {
    const { trace, state } = this;
    state.time = trace.endTime;
    state.angle = trace.endAngle;
    state.speed = 0;
    const away = Math.abs(state.angle - ride.latch.centre);
    let code: OutcomeCode = CAUGHT;
    if (away > ride.latch.block) code = SHUT_OUT;
    else if (away > ride.latch.capture) code = this.rideOn();
    this.stretches.addBefore(trace.endTime, Number.POSITIVE_INFINITY, code);
  }

  /**
   * Runs the ride from `state`, with `RideBounds` only until its end is sure.
   */
  private rideOn(): OutcomeCode {
    this.rides++;
    const ride = this.ride as RideSystem;
    if (this.bounds !== null) {
      const outcome = this.firmRide.run(ride, this.bounds, this.state);
      this.way = wayOf(this.firmRide.way, outcome);
      this.direct = this.firmRide.direct;
      return outcome;
    }
    this.watch.run(ride, this.state);
    this.way = this.watch.way;
    this.direct = this.watch.direct;
    return this.watch.outcome;
  }

  private timeOf(mark: number): number {
    return this.marks.time(mark, this.trace, this.free as SwingSystem);
  }

  /** Place in the lists per direction of the passage that a piece belongs to. */
  private side(piece: number): 0 | 1 {
    return this.marks.direction(piece) > 0 ? 1 : 0;
  }

  /** One stay inside the slot, whose last piece is given. Returns the piece before it. */
  private visit(last: number, { latch }: RideSystem): number {
    const { marks, stretches } = this;
    let first = last;
    while (first > 0 && marks.zone(first - 1) === INSIDE) first--;
    const side = this.side(last);
    if (first === last && this.done[side]) return first - 1;
    const from = this.timeOf(first);
    const to = this.timeOf(last + 1);
    if (last === marks.count - 2) {
      stretches.addBefore(from, to, CAUGHT);
      return first - 1;
    }
    if (this.isCalm(first)) {
      stretches.addBefore(from, to, CAUGHT);
      return first - 1;
    }
    const rise = latch.toEngagement - latch.toMouth;
    const latest = Math.max(from, to - rise);
    this.fleeting = first === last && latest === from;
    if (this.fast[side]) this.done[side] ||= this.fleeting;
    else stretches.addBefore(latest, to, this.exitRide(last + 1));
    stretches.addBefore(from, latest, CAUGHT);
    return first - 1;
  }

  /** Outcome of the ride from where the flap leaves the slot. */
  private exitRide(mark: number): OutcomeCode {
    if (mark !== this.exitMark) {
      this.stateAt(mark, this.marks.direction(mark - 1));
      this.exitMark = mark;
      this.exitOutcome = this.rideOn();
    }
    return this.exitOutcome;
  }

  /** State at a mark; at an edge of the slot or of the flap just past it in direction `side`. */
  private stateAt(mark: number, side: number): void {
    const { marks, state, trace } = this;
    marks.state(mark, trace, this.free as SwingSystem, state);
    const kind = marks.kind(mark);
    if (kind === CAPTURE_EDGE || kind === BLOCK_EDGE) state.angle += side * PAST_EDGE;
  }

  /** One passage over the edge, towards the slot or away from it. */
  private riding(piece: number): void {
    const { marks } = this;
    const side = this.side(piece);
    if (this.fast[side]) return;
    const direction = marks.direction(piece);
    if (direction === 0) return;
    if (this.isCalm(piece)) {
      this.stretches.addBefore(this.timeOf(piece), this.timeOf(piece + 1), CAUGHT);
      return;
    }
    this.stateAt(piece, direction);
    const early = this.rideOn();
    const earlyWay = this.way;
    const outwards = marks.middle(piece) * direction > 0;
    if (outwards && marks.kind(piece) === CAPTURE_EDGE) {
      this.exitMark = piece;
      this.exitOutcome = early;
    }
    const from = this.timeOf(piece);
    const earlyExcess = this.firmRide.excess;
    if (this.direct) {
      if (!outwards && marks.kind(piece) === BLOCK_EDGE) {
        this.fast[side] = true;
        this.done[side] = this.fleeting;
      }
      return;
    }
    let late: OutcomeCode = SHUT_OUT;
    let lateWay = wayOf(0, SHUT_OUT);
    let lateExcess = Number.NaN;
    if (!(outwards && marks.kind(piece + 1) === BLOCK_EDGE)) {
      this.stateAt(piece + 1, -direction);
      late = this.rideOn();
      lateWay = this.way;
      lateExcess = this.firmRide.excess;
    }
    const to = this.timeOf(piece + 1);
    this.between(from, early, earlyWay, earlyExcess, to, late, lateWay, lateExcess, 0);
  }

  /** Stretches between two rides of one passage, the later ones first. */
  private between(
    from: number,
    early: OutcomeCode,
    earlyWay: number,
    earlyExcess: number,
    to: number,
    late: OutcomeCode,
    lateWay: number,
    lateExcess: number,
    tries: number,
  ): void {
    if (earlyWay === lateWay) {
      this.stretches.addBefore(from, to, early);
      return;
    }
    const enough = early === late ? SAME_END * this.sharp : this.sharp;
    const x = this.probe(from, earlyExcess, to, lateExcess, tries);
    if (to - from <= enough || !(x > from && x < to)) {
      this.stretches.addBefore(from, to, Math.max(early, late) as OutcomeCode);
      return;
    }
    this.trace.at(this.free as SwingSystem, x, this.state);
    const code = this.rideOn();
    const { way } = this;
    const { excess } = this.firmRide;
    this.between(x, code, way, excess, to, late, lateWay, lateExcess, tries + 1);
    this.between(from, early, earlyWay, earlyExcess, x, code, way, excess, tries + 1);
  }

  /**
   * Where to try next: the secant of the energies left over where the flap turned in the one ride and was shut out in the other,
   * kept off the ends so that they close in from both sides; else the middle.
   */
  private probe(from: number, early: number, to: number, late: number, tries: number): number {
    const width = to - from;
    if (this.bounds === null || tries >= SECANTS || !(early < 0 && late > 0)) return from + width / 2;
    const room = Math.min(0.9 * this.sharp, width / 2);
    return Math.max(from + room, Math.min(to - room, from + (width * early) / (early - late)));
  }
}
