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
export const A2 = [5.26001519587677318785587544488e-2] as const;
export const A3 = [1.97250569845378994544595329183e-2, 5.91751709536136983633785987549e-2] as const;
export const A4 = [2.95875854768068491816892993775e-2, 0, 8.87627564304205475450678981324e-2] as const;
export const A5 = [
  2.41365134159266685502369798665e-1, 0, -8.84549479328286085344864962717e-1,
  9.24834003261792003115737966543e-1,
] as const;
export const A6 = [
  3.7037037037037037037037037037e-2, 0, 0, 1.70828608729473871279604482173e-1,
  1.25467687566822425016691814123e-1,
] as const;
export const A7 = [
  3.7109375e-2, 0, 0, 1.70252211019544039314978060272e-1, 6.02165389804559606850219397283e-2, -1.7578125e-2,
] as const;
export const A8 = [
  3.70920001185047927108779319836e-2, 0, 0, 1.70383925712239993810214054705e-1,
  1.07262030446373284651809199168e-1, -1.53194377486244017527936158236e-2, 8.27378916381402288758473766002e-3,
] as const;
export const A9 = [
  6.24110958716075717114429577812e-1, 0, 0, -3.36089262944694129406857109825,
  -8.68219346841726006818189891453e-1, 2.75920996994467083049415600797e1, 2.01540675504778934086186788979e1,
  -4.34898841810699588477366255144e1,
] as const;
export const A10 = [
  4.77662536438264365890433908527e-1, 0, 0, -2.48811461997166764192642586468,
  -5.90290826836842996371446475743e-1, 2.12300514481811942347288949897e1, 1.52792336328824235832596922938e1,
  -3.32882109689848629194453265587e1, -2.03312017085086261358222928593e-2,
] as const;
export const A11 = [
  -9.3714243008598732571704021658e-1, 0, 0, 5.18637242884406370830023853209, 1.09143734899672957818500254654,
  -8.14978701074692612513997267357, -1.85200656599969598641566180701e1, 2.27394870993505042818970056734e1,
  2.49360555267965238987089396762, -3.0467644718982195003823669022,
] as const;
export const A12 = [
  2.27331014751653820792359768449, 0, 0, -1.05344954667372501984066689879e1, -2.00087205822486249909675718444,
  -1.79589318631187989172765950534e1, 2.79488845294199600508499808837e1, -2.85899827713502369474065508674,
  -8.87285693353062954433549289258, 1.23605671757943030647266201528e1, 6.43392746015763530355970484046e-1,
] as const;
/** Weights of the order-8 solution. */
export const B = [
  5.42937341165687622380535766363e-2, 0, 0, 0, 0, 4.45031289275240888144113950566,
  1.89151789931450038304281599044, -5.8012039600105847814672114227, 3.1116436695781989440891606237e-1,
  -1.52160949662516078556178806805e-1, 2.01365400804030348374776537501e-1, 4.47106157277725905176885569043e-2,
] as const;
/** Weights of the order-5 error estimate. */
export const E5 = [
  0.1312004499419488073250102996e-1, 0, 0, 0, 0, -0.1225156446376204440720569753e1,
  -0.4957589496572501915214079952, 0.1664377182454986536961530415e1, -0.350328848749973681688648729,
  0.3341791187130174790297318841, 0.8192320648511571246570742613e-1, -0.2235530786388629525884427845e-1,
] as const;
/** The order-3 comparison: `B` less these three gives its error weights. */
export const B3 = [0.244094488188976377952755905512, 0.733846688281611857341361741547, 0.220588235294117647058823529412e-1] as const;

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
  const wB = speed + h * (AB1 * k1 + AB4 * k4 + AB5 * k5 + AB6 * k6 + AB7 * k7 + AB8 * k8 + AB9 * k9 + ABA * kA);
  const qB = angle + h * (AB1 * w1 + AB4 * w4 + AB5 * w5 + AB6 * w6 + AB7 * w7 + AB8 * w8 + AB9 * w9 + ABA * wA);
  const kB = acceleration(system, qB, wB, damping, friction);
  const wC =
    speed + h * (AC1 * k1 + AC4 * k4 + AC5 * k5 + AC6 * k6 + AC7 * k7 + AC8 * k8 + AC9 * k9 + ACA * kA + ACB * kB);
  const qC =
    angle + h * (AC1 * w1 + AC4 * w4 + AC5 * w5 + AC6 * w6 + AC7 * w7 + AC8 * w8 + AC9 * w9 + ACA * wA + ACB * wB);
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
    (B1 * w1 * w1 + B6 * w6 * w6 + B7 * w7 * w7 + B8 * w8 * w8 + B9 * w9 * w9 + BA * wA * wA + BB * wB * wB + BC * wC * wC);
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
