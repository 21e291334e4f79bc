/**
 * The stepper: one step of the explicit Runge–Kutta method of order 8 with embedded orders 5 and 3, DOP853
 * (Dormand and Prince; coefficients from Hairer, Nørsett and Wanner, *Solving Ordinary Differential Equations I*,
 * 2nd ed., section II.10 and its published program). It knows the equation of motion, and nothing of events.
 *
 * One algorithm, written out stage by stage so that the compiler keeps every value in a register: longer than the
 * house's habit for that reason. `tests/core/swing/dormand-prince.test.ts` proves the coefficients by their
 * order conditions and the written-out step by a second, looped one.
 */
import { tableTorque } from "../parts/torque-table.ts";
import type { SwingSystem } from "./system.ts";
import { motionDrag, pressureTorque, windTorque } from "./torque.ts";

/** Rows 2…12 of the method's matrix, as (stage, from-stage, coefficient). */
export const A2 = [0.05260015195876773] as const;
export const A3 = [0.0197250569845379, 0.0591751709536137] as const;
export const A4 = [0.02958758547680685, 0, 0.08876275643042054] as const;
export const A5 = [0.2413651341592667, 0, -0.8845494793282861, 0.924834003261792] as const;
export const A6 = [0.037037037037037035, 0, 0, 0.17082860872947386, 0.12546768756682242] as const;
export const A7 = [3.7109375e-2, 0, 0, 0.17025221101954405, 0.06021653898045596, -1.7578125e-2] as const;
export const A8 = [
  0.03709200011850479, 0, 0, 0.17038392571223998, 0.10726203044637328, -0.015319437748624402,
  0.008273789163814023,
] as const;
export const A9 = [
  0.6241109587160757, 0, 0, -3.3608926294469414, -0.868219346841726, 27.59209969944671, 20.154067550477894,
  -43.48988418106996,
] as const;
export const A10 = [
  0.47766253643826434, 0, 0, -2.4881146199716677, -0.590290826836843, 21.230051448181193, 15.279233632882423,
  -33.28821096898486, -0.020331201708508627,
] as const;
export const A11 = [
  -0.9371424300859873, 0, 0, 5.186372428844064, 1.0914373489967295, -8.149787010746927, -18.52006565999696,
  22.739487099350505, 2.4936055526796523, -3.0467644718982196,
] as const;
export const A12 = [
  2.273310147516538, 0, 0, -10.53449546673725, -2.0008720582248625, -17.9589318631188, 27.94888452941996,
  -2.8589982771350235, -8.87285693353063, 12.360567175794303, 0.6433927460157636,
] as const;
/** Weights of the order-8 solution. */
export const B = [
  0.054293734116568765, 0, 0, 0, 0, 4.450312892752409, 1.8915178993145003, -5.801203960010585,
  0.3111643669578199, -0.1521609496625161, 0.20136540080403034, 0.04471061572777259,
] as const;
/** Weights of the order-5 error estimate. */
export const E5 = [
  0.01312004499419488, 0, 0, 0, 0, -1.2251564463762044, -0.4957589496572502, 1.6643771824549864,
  -0.35032884874997366, 0.3341791187130175, 0.08192320648511571, -0.022355307863886294,
] as const;
/** The order-3 comparison: `B` less these three gives its error weights. */
export const B3 = [0.2440944881889764, 0.7338466882816118, 0.022058823529411766] as const;

const [A21] = A2;
const [A31, A32] = A3;
const [A41, , A43] = A4;
const [A51, , A53, A54] = A5;
const [A61, , , A64, A65] = A6;
const [A71, , , A74, A75, A76] = A7;
const [A81, , , A84, A85, A86, A87] = A8;
const [A91, , , A94, A95, A96, A97, A98] = A9;
const [AA1, , , AA4, AA5, AA6, AA7, AA8, AA9] = A10;
const [AB1, , , AB4, AB5, AB6, AB7, AB8, AB9, ABA] = A11;
const [AC1, , , AC4, AC5, AC6, AC7, AC8, AC9, ACA, ACB] = A12;
const [B1, , , , , B6, B7, B8, B9, BA, BB, BC] = B;
const [E1, , , , , E6, E7, E8, E9, EA, EB, EC] = E5;
const [D1, D9, DC] = B3;

/** What a step leaves in its output array. */
export const OUT_ANGLE = 0;
export const OUT_SPEED = 1;
/** Error over tolerance: at most 1 is good. */
export const OUT_ERROR = 2;
/** ∫ ω² dt, rad²/s. */
export const OUT_SQUARE = 3;
/** ∫ τ ω dt of air, wind and pressure, J (negative where they take energy out). */
export const OUT_AIR = 4;
export const OUT_SIZE = 5;

/** Relative and absolute tolerance of the step control, in rad and rad/s. Settle time follows within 10⁻⁶ s. */
export const TOLERANCE = { relative: 1e-9, absolute: 1e-10 } as const;

/**
 * Angular acceleration, rad/s². `friction` is the dry torque with its sign, −τ_fric sgn ω: it is a constant between two
 * turning points, also for the stages of a step that look a little past one.
 */
export function acceleration(
  system: SwingSystem,
  angle: number,
  speed: number,
  damping: number,
  friction: number,
): number {
  const { magnets, air } = system;
  let torque = friction - damping * speed - system.weightMoment * Math.sin(angle - system.plumb);
  if (magnets !== null) torque += tableTorque(magnets, angle);
  if (air.wind === 0) torque -= air.stillDrag * Math.abs(speed) * speed;
  else torque += windTorque(air, angle) + motionDrag(air, angle, speed);
  if (system.pressureMoment !== 0) torque += pressureTorque(system, angle);
  return torque / system.inertia;
}

/** Power that moving air, wind and pressure put into the flap, W. */
export function airPower(system: SwingSystem, angle: number, speed: number): number {
  const drag = motionDrag(system.air, angle, speed);
  return (drag + windTorque(system.air, angle) + pressureTorque(system, angle)) * speed;
}

/**
 * One step of size `h` from (angle, speed), where the acceleration is `start`. Writes angle, speed, error over tolerance
 * and the two energy integrals into `out`. The last stage of the method is the first of the next step and is not computed here.
 */
export function step(
  system: SwingSystem,
  angle: number,
  speed: number,
  start: number,
  damping: number,
  friction: number,
  h: number,
  out: Float64Array,
): void {
  const w1 = speed;
  const k1 = start;
  const w2 = speed + h * (A21 * k1);
  const q2 = angle + h * (A21 * w1);
  const k2 = acceleration(system, q2, w2, damping, friction);
  const w3 = speed + h * (A31 * k1 + A32 * k2);
  const q3 = angle + h * (A31 * w1 + A32 * w2);
  const k3 = acceleration(system, q3, w3, damping, friction);
  const w4 = speed + h * (A41 * k1 + A43 * k3);
  const q4 = angle + h * (A41 * w1 + A43 * w3);
  const k4 = acceleration(system, q4, w4, damping, friction);
  const w5 = speed + h * (A51 * k1 + A53 * k3 + A54 * k4);
  const q5 = angle + h * (A51 * w1 + A53 * w3 + A54 * w4);
  const k5 = acceleration(system, q5, w5, damping, friction);
  const w6 = speed + h * (A61 * k1 + A64 * k4 + A65 * k5);
  const q6 = angle + h * (A61 * w1 + A64 * w4 + A65 * w5);
  const k6 = acceleration(system, q6, w6, damping, friction);
  const w7 = speed + h * (A71 * k1 + A74 * k4 + A75 * k5 + A76 * k6);
  const q7 = angle + h * (A71 * w1 + A74 * w4 + A75 * w5 + A76 * w6);
  const k7 = acceleration(system, q7, w7, damping, friction);
  const w8 = speed + h * (A81 * k1 + A84 * k4 + A85 * k5 + A86 * k6 + A87 * k7);
  const q8 = angle + h * (A81 * w1 + A84 * w4 + A85 * w5 + A86 * w6 + A87 * w7);
  const k8 = acceleration(system, q8, w8, damping, friction);
  const w9 = speed + h * (A91 * k1 + A94 * k4 + A95 * k5 + A96 * k6 + A97 * k7 + A98 * k8);
  const q9 = angle + h * (A91 * w1 + A94 * w4 + A95 * w5 + A96 * w6 + A97 * w7 + A98 * w8);
  const k9 = acceleration(system, q9, w9, damping, friction);
  const wA = speed + h * (AA1 * k1 + AA4 * k4 + AA5 * k5 + AA6 * k6 + AA7 * k7 + AA8 * k8 + AA9 * k9);
  const qA = angle + h * (AA1 * w1 + AA4 * w4 + AA5 * w5 + AA6 * w6 + AA7 * w7 + AA8 * w8 + AA9 * w9);
  const kA = acceleration(system, qA, wA, damping, friction);
  const wB =
    speed + h * (AB1 * k1 + AB4 * k4 + AB5 * k5 + AB6 * k6 + AB7 * k7 + AB8 * k8 + AB9 * k9 + ABA * kA);
  const qB =
    angle + h * (AB1 * w1 + AB4 * w4 + AB5 * w5 + AB6 * w6 + AB7 * w7 + AB8 * w8 + AB9 * w9 + ABA * wA);
  const kB = acceleration(system, qB, wB, damping, friction);
  const wC =
    speed +
    h * (AC1 * k1 + AC4 * k4 + AC5 * k5 + AC6 * k6 + AC7 * k7 + AC8 * k8 + AC9 * k9 + ACA * kA + ACB * kB);
  const qC =
    angle +
    h * (AC1 * w1 + AC4 * w4 + AC5 * w5 + AC6 * w6 + AC7 * w7 + AC8 * w8 + AC9 * w9 + ACA * wA + ACB * wB);
  const kC = acceleration(system, qC, wC, damping, friction);

  const slope = B1 * k1 + B6 * k6 + B7 * k7 + B8 * k8 + B9 * k9 + BA * kA + BB * kB + BC * kC;
  const drift = B1 * w1 + B6 * w6 + B7 * w7 + B8 * w8 + B9 * w9 + BA * wA + BB * wB + BC * wC;
  const newSpeed = speed + h * slope;
  const newAngle = angle + h * drift;
  out[OUT_ANGLE] = newAngle;
  out[OUT_SPEED] = newSpeed;

  const scaleQ = TOLERANCE.absolute + TOLERANCE.relative * Math.max(Math.abs(angle), Math.abs(newAngle));
  const scaleW = TOLERANCE.absolute + TOLERANCE.relative * Math.max(Math.abs(speed), Math.abs(newSpeed));
  const e5q = (E1 * w1 + E6 * w6 + E7 * w7 + E8 * w8 + E9 * w9 + EA * wA + EB * wB + EC * wC) / scaleQ;
  const e5w = (E1 * k1 + E6 * k6 + E7 * k7 + E8 * k8 + E9 * k9 + EA * kA + EB * kB + EC * kC) / scaleW;
  const e3q = (drift - D1 * w1 - D9 * w9 - DC * wC) / scaleQ;
  const e3w = (slope - D1 * k1 - D9 * k9 - DC * kC) / scaleW;
  const five = e5q * e5q + e5w * e5w;
  const three = e3q * e3q + e3w * e3w;
  const norm = five + 0.01 * three;
  out[OUT_ERROR] = norm === 0 ? 0 : (Math.abs(h) * five) / Math.sqrt(2 * norm);

  out[OUT_SQUARE] =
    h *
    (B1 * w1 * w1 +
      B6 * w6 * w6 +
      B7 * w7 * w7 +
      B8 * w8 * w8 +
      B9 * w9 * w9 +
      BA * wA * wA +
      BB * wB * wB +
      BC * wC * wC);
  out[OUT_AIR] =
    h *
    (B1 * airPower(system, angle, w1) +
      B6 * airPower(system, q6, w6) +
      B7 * airPower(system, q7, w7) +
      B8 * airPower(system, q8, w8) +
      B9 * airPower(system, q9, w9) +
      BA * airPower(system, qA, wA) +
      BB * airPower(system, qB, wB) +
      BC * airPower(system, qC, wC));
}
