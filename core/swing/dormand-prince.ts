/**
 * The stepper: one step of the explicit Runge–Kutta method of order 8 with embedded orders 5 and 3, DOP853
 * (Dormand and Prince; coefficients from Hairer, Nørsett and Wanner, *Solving Ordinary Differential Equations I*,
 * 2nd ed., section II.10 and its published program). It solves two equations at once in whatever variable runs, and adds
 * up two more that nothing depends on; it knows nothing of flaps or of events.
 *
 * One algorithm, written out stage by stage so that the compiler keeps every value in a register: longer than the
 * house's habit for that reason. `tests/core/swing/dormand-prince.test.ts` proves the coefficients by their
 * order conditions.
 */
import type { Forces, SwingSystem } from "./system.ts";

/** Nodes of stages 2…11; the twelfth is at 1. */
export const C = [
  0.05260015195876773,
  0.0789002279381516,
  0.1183503419072274,
  0.2816496580927726,
  1 / 3,
  0.25,
  4 / 13,
  0.6512820512820513,
  0.6,
  6 / 7,
] as const;
/** Rows 2…12 of the method's matrix: coefficients of the stages before. */
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

const [C2, C3, C4, C5, C6, C7, C8, C9, CA, CB] = C;
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

/**
 * Right side of the two equations a' = f(x, a, b), b' = g(x, a, b) and of the two sums. Finds x, a, b in the first three
 * places of `io` and leaves a', b' and what the step has to add up in the first four: numbers in an array need no box of
 * their own, as arguments of a call do, so that a step allocates nothing.
 */
export type Field = (system: SwingSystem, forces: Forces, io: Float64Array) => void;

/** What a step leaves in its output array, after the four scratch values of the field. */
export const OUT_A = 4;
export const OUT_B = 5;
export const OUT_FIRST_SUM = 6;
export const OUT_SECOND_SUM = 7;
/** Error estimates of orders 5 and 3 for both values, per unit of step. */
const OUT_FIVE_A = 8;
const OUT_FIVE_B = 9;
const OUT_THREE_A = 10;
const OUT_THREE_B = 11;
/** The same for the two sums together. */
const OUT_FIVE_SUM = 12;
const OUT_THREE_SUM = 13;
export const OUT_SIZE = 14;

/**
 * One step of size `h` in the running variable, from (x, a, b). Leaves the two values at its end, the two sums and what
 * `stepError` needs in `out`; a stage outside the field's domain makes them NaN.
 */
export function step(
  field: Field,
  system: SwingSystem,
  forces: Forces,
  x: number,
  a: number,
  b: number,
  h: number,
  out: Float64Array,
): void {
  out[0] = x;
  out[1] = a;
  out[2] = b;
  field(system, forces, out);
  const p1 = out[0];
  const q1 = out[1];
  let first = B1 * out[2];
  let second = B1 * out[3];
  let fiveSum = E1 * (out[2] + out[3]);
  let threeSum = (B1 - D1) * (out[2] + out[3]);
  out[0] = x + C2 * h;
  out[1] = a + h * (A21 * p1);
  out[2] = b + h * (A21 * q1);
  field(system, forces, out);
  const p2 = out[0];
  const q2 = out[1];
  out[0] = x + C3 * h;
  out[1] = a + h * (A31 * p1 + A32 * p2);
  out[2] = b + h * (A31 * q1 + A32 * q2);
  field(system, forces, out);
  const p3 = out[0];
  const q3 = out[1];
  out[0] = x + C4 * h;
  out[1] = a + h * (A41 * p1 + A43 * p3);
  out[2] = b + h * (A41 * q1 + A43 * q3);
  field(system, forces, out);
  const p4 = out[0];
  const q4 = out[1];
  out[0] = x + C5 * h;
  out[1] = a + h * (A51 * p1 + A53 * p3 + A54 * p4);
  out[2] = b + h * (A51 * q1 + A53 * q3 + A54 * q4);
  field(system, forces, out);
  const p5 = out[0];
  const q5 = out[1];
  out[0] = x + C6 * h;
  out[1] = a + h * (A61 * p1 + A64 * p4 + A65 * p5);
  out[2] = b + h * (A61 * q1 + A64 * q4 + A65 * q5);
  field(system, forces, out);
  const p6 = out[0];
  const q6 = out[1];
  first += B6 * out[2];
  second += B6 * out[3];
  fiveSum += E6 * (out[2] + out[3]);
  threeSum += B6 * (out[2] + out[3]);
  out[0] = x + C7 * h;
  out[1] = a + h * (A71 * p1 + A74 * p4 + A75 * p5 + A76 * p6);
  out[2] = b + h * (A71 * q1 + A74 * q4 + A75 * q5 + A76 * q6);
  field(system, forces, out);
  const p7 = out[0];
  const q7 = out[1];
  first += B7 * out[2];
  second += B7 * out[3];
  fiveSum += E7 * (out[2] + out[3]);
  threeSum += B7 * (out[2] + out[3]);
  out[0] = x + C8 * h;
  out[1] = a + h * (A81 * p1 + A84 * p4 + A85 * p5 + A86 * p6 + A87 * p7);
  out[2] = b + h * (A81 * q1 + A84 * q4 + A85 * q5 + A86 * q6 + A87 * q7);
  field(system, forces, out);
  const p8 = out[0];
  const q8 = out[1];
  first += B8 * out[2];
  second += B8 * out[3];
  fiveSum += E8 * (out[2] + out[3]);
  threeSum += B8 * (out[2] + out[3]);
  out[0] = x + C9 * h;
  out[1] = a + h * (A91 * p1 + A94 * p4 + A95 * p5 + A96 * p6 + A97 * p7 + A98 * p8);
  out[2] = b + h * (A91 * q1 + A94 * q4 + A95 * q5 + A96 * q6 + A97 * q7 + A98 * q8);
  field(system, forces, out);
  const p9 = out[0];
  const q9 = out[1];
  first += B9 * out[2];
  second += B9 * out[3];
  fiveSum += E9 * (out[2] + out[3]);
  threeSum += (B9 - D9) * (out[2] + out[3]);
  out[0] = x + CA * h;
  out[1] = a + h * (AA1 * p1 + AA4 * p4 + AA5 * p5 + AA6 * p6 + AA7 * p7 + AA8 * p8 + AA9 * p9);
  out[2] = b + h * (AA1 * q1 + AA4 * q4 + AA5 * q5 + AA6 * q6 + AA7 * q7 + AA8 * q8 + AA9 * q9);
  field(system, forces, out);
  const pA = out[0];
  const qA = out[1];
  first += BA * out[2];
  second += BA * out[3];
  fiveSum += EA * (out[2] + out[3]);
  threeSum += BA * (out[2] + out[3]);
  out[0] = x + CB * h;
  out[1] = a + h * (AB1 * p1 + AB4 * p4 + AB5 * p5 + AB6 * p6 + AB7 * p7 + AB8 * p8 + AB9 * p9 + ABA * pA);
  out[2] = b + h * (AB1 * q1 + AB4 * q4 + AB5 * q5 + AB6 * q6 + AB7 * q7 + AB8 * q8 + AB9 * q9 + ABA * qA);
  field(system, forces, out);
  const pB = out[0];
  const qB = out[1];
  first += BB * out[2];
  second += BB * out[3];
  fiveSum += EB * (out[2] + out[3]);
  threeSum += BB * (out[2] + out[3]);
  out[0] = x + h;
  out[1] =
    a +
    h * (AC1 * p1 + AC4 * p4 + AC5 * p5 + AC6 * p6 + AC7 * p7 + AC8 * p8 + AC9 * p9 + ACA * pA + ACB * pB);
  out[2] =
    b +
    h * (AC1 * q1 + AC4 * q4 + AC5 * q5 + AC6 * q6 + AC7 * q7 + AC8 * q8 + AC9 * q9 + ACA * qA + ACB * qB);
  field(system, forces, out);
  const pC = out[0];
  const qC = out[1];
  first += BC * out[2];
  second += BC * out[3];
  fiveSum += EC * (out[2] + out[3]);
  threeSum += (BC - DC) * (out[2] + out[3]);

  const slopeA = B1 * p1 + B6 * p6 + B7 * p7 + B8 * p8 + B9 * p9 + BA * pA + BB * pB + BC * pC;
  const slopeB = B1 * q1 + B6 * q6 + B7 * q7 + B8 * q8 + B9 * q9 + BA * qA + BB * qB + BC * qC;
  out[OUT_A] = a + h * slopeA;
  out[OUT_B] = b + h * slopeB;
  out[OUT_FIRST_SUM] = h * first;
  out[OUT_SECOND_SUM] = h * second;
  out[OUT_FIVE_SUM] = fiveSum;
  out[OUT_THREE_SUM] = threeSum;
  out[OUT_FIVE_A] = E1 * p1 + E6 * p6 + E7 * p7 + E8 * p8 + E9 * p9 + EA * pA + EB * pB + EC * pC;
  out[OUT_FIVE_B] = E1 * q1 + E6 * q6 + E7 * q7 + E8 * q8 + E9 * q9 + EA * qA + EB * qB + EC * qC;
  out[OUT_THREE_A] = slopeA - D1 * p1 - D9 * p9 - DC * pC;
  out[OUT_THREE_B] = slopeB - D1 * q1 - D9 * q9 - DC * qC;
}

/**
 * Error of the last step over what may be made in each value and in the sums: at most 1 is good, NaN is not. Weighs order 5
 * by order 3 as the published program does.
 */
export function stepError(
  out: Float64Array,
  h: number,
  scaleA: number,
  scaleB: number,
  scaleSum: number,
): number {
  const fiveA = out[OUT_FIVE_A] / scaleA;
  const fiveB = out[OUT_FIVE_B] / scaleB;
  const fiveSum = out[OUT_FIVE_SUM] / scaleSum;
  const threeA = out[OUT_THREE_A] / scaleA;
  const threeB = out[OUT_THREE_B] / scaleB;
  const threeSum = out[OUT_THREE_SUM] / scaleSum;
  const five = fiveA * fiveA + fiveB * fiveB + fiveSum * fiveSum;
  const norm = five + 0.01 * (threeA * threeA + threeB * threeB + threeSum * threeSum);
  return norm === 0 ? 0 : (Math.abs(h) * five) / Math.sqrt(2 * norm);
}

/** Factor by which the next step may be longer, or must be shorter, from an error over tolerance (order 8). */
export function stepFactor(error: number): number {
  if (!(error < 1e10)) return 0.2;
  return Math.max(0.2, Math.min(6, 0.9 * Math.max(error, 1e-8) ** -0.125));
}
