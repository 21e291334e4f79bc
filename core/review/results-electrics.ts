/** Results of solenoid, driver, supply and timer, of the opening's fit, the passage and the hold. */
import { from, key, type ResultDefinition } from "./result.ts";

const MODEL = (section: string) => `model page, section ${section}`;
const COPPER = "copper, 0.00393/K at 20 °C (IEC 60028)";

const coilKeys = ["ratedVoltage", "ratedCurrent"].map((k) => key(`solenoid.${k}`));
const switchKeys = [key("driver.kind"), key("driver.dropVoltage"), key("driver.onResistance")];
const circuitKeys = [key("supply.voltage"), ...switchKeys, key("solenoid.ambient")];
const boltKeys = ["springForce", "boltMass", "boltPoints"].map((k) => key(`latch.${k}`));
const withdrawKeys = [
  ...boltKeys,
  key("latch.frictionCoefficient"),
  key("latch.guideFactor"),
  key("solenoid.pull"),
  key("solenoid.stroke"),
];

const solenoid: readonly ResultDefinition[] = [
  {
    name: "solenoid.resistance",
    unit: "ohm",
    title: "coil at 20 °C",
    formula: "V_r/I_r",
    inputs: coilKeys,
    source: MODEL("5"),
    value: (c) => c.solenoid?.resistance ?? null,
  },
  {
    name: "solenoid.current",
    unit: "A",
    title: "coil current at its ambient",
    formula: "(V_s − V_drop)/R(T_a) with a Darlington, V_s/(R(T_a) + R_on) with a MOSFET",
    inputs: [from("solenoid.resistance"), ...circuitKeys],
    source: `${MODEL("5")}; ${COPPER}`,
    value: (c) => c.solenoid?.coil?.current ?? null,
  },
  {
    name: "solenoid.pullInVoltage",
    unit: "V",
    title: "least supply voltage that withdraws the bolt",
    formula: "i_p R + V_drop (MOSFET i_p (R + R_on)), i_p = I_r √(F_needed/F(full stroke))",
    inputs: [
      from("solenoid.resistance"),
      key("solenoid.ratedCurrent"),
      ...withdrawKeys,
      key("latch.sideLoad"),
      ...switchKeys,
      key("solenoid.ambient"),
    ],
    source: MODEL("5"),
    value: (c) => c.solenoid?.pullInVoltage ?? null,
  },
  {
    name: "solenoid.pullInTime",
    unit: "s",
    title: "until the current is enough to withdraw the bolt",
    formula: "−τ ln(1 − i_p/i), τ = L/R; none if i_p ≥ i",
    inputs: [from("solenoid.current"), from("solenoid.pullInVoltage"), key("solenoid.inductance")],
    source: `${MODEL("5")}; current rise of an R–L circuit`,
    value: (c) => c.solenoid?.bolt?.pullIn.time ?? null,
  },
  {
    name: "solenoid.releaseTime",
    unit: "s",
    title: "from switching off until the bolt is let go",
    formula: "τ ln((i + V_f/R)/(i_r + V_f/R)), F(0)(i_r/I_r)² = F_s ∓ m_b g",
    inputs: [
      from("solenoid.current"),
      key("solenoid.inductance"),
      key("driver.clamp"),
      key("driver.clampVoltage"),
      ...boltKeys,
      key("solenoid.pull"),
    ],
    source: `${MODEL("5")}; current decay into a clamp`,
    value: (c) => c.solenoid?.bolt?.releaseTime ?? null,
  },
  {
    name: "solenoid.sideLoadLimit",
    unit: "N",
    title: "side load on the bolt at which the hot coil just fails",
    formula: "(F(full stroke)(i/I_r)² − F_s ± m_b g)/(k_g μ) at the continuous temperature",
    inputs: [from("solenoid.continuousTemperature"), ...withdrawKeys],
    source: MODEL("5"),
    value: (c) => c.solenoid?.bolt?.sideLoadLimit ?? null,
  },
  {
    name: "solenoid.holdTemperature",
    unit: "degC",
    title: "coil after one hold from ambient",
    formula: "dT/dt = (T_a + R_th P(T) − T)/τ_th over timer.nominal, P = i(T)² R(T)",
    inputs: [
      from("solenoid.current"),
      key("solenoid.thermalResistance"),
      key("solenoid.thermalTimeConstant"),
      from("timer.nominal"),
      key("solenoid.ambient"),
    ],
    source: `${MODEL("5")}; ${COPPER}`,
    value: (c) => c.solenoid?.coil?.holdTemperature ?? null,
  },
  {
    name: "solenoid.continuousTemperature",
    unit: "degC",
    title: "coil that is never switched off",
    formula: "T = T_a + R_th P(T)",
    inputs: [from("solenoid.current"), key("solenoid.thermalResistance"), key("solenoid.ambient")],
    source: `${MODEL("5")}; classes by IEC 60085; ${COPPER}`,
    value: (c) => c.solenoid?.coil?.continuousTemperature ?? null,
  },
];

const supply: readonly ResultDefinition[] = [
  {
    name: "driver.dissipation",
    unit: "W",
    title: "heat in the transistor while the coil is on",
    formula: "V_drop I, or I² R_on",
    inputs: [from("solenoid.current"), ...switchKeys],
    source: MODEL("5"),
    value: (c) => c.driver?.dissipation ?? null,
  },
  {
    name: "supply.current",
    unit: "A",
    title: "drawn from the supply with the coil on",
    formula: "coil at ambient + regulator input (linear: I; switching: V_out I/(η V_in))",
    inputs: [
      from("solenoid.current"),
      ...["voltage", "logicVoltage", "logicCurrent", "regulator", "efficiency"].map((k) =>
        key(`supply.${k}`),
      ),
    ],
    source: MODEL("5"),
    value: (c) => c.supply?.current ?? null,
  },
  {
    name: "regulator.dissipation",
    unit: "W",
    title: "heat in the regulator",
    formula: "linear (V_in − V_out) I; switching V_out I (1/η − 1)",
    inputs: ["voltage", "logicVoltage", "logicCurrent", "regulator", "efficiency"].map((k) =>
      key(`supply.${k}`),
    ),
    source: MODEL("5"),
    value: (c) => c.supply?.regulatorDissipation ?? null,
  },
  {
    name: "regulator.temperature",
    unit: "degC",
    title: "the regulator's junction",
    formula: "T_a + P θ_JA",
    inputs: [from("regulator.dissipation"), key("supply.thermalResistance"), key("supply.ambient")],
    source: MODEL("5"),
    value: (c) => c.supply?.regulatorTemperature ?? null,
  },
];

const timerKeys = ["holdTime", "resistor", "capacitor"].map((k) => key(`timer.${k}`));
const timer: readonly ResultDefinition[] = [
  {
    name: "timer.nominal",
    unit: "s",
    title: "hold the timer is built for",
    formula: "R C ln 3 (published as 1.1 R C), or `timer.holdTime` without R and C",
    inputs: timerKeys,
    source: MODEL("5"),
    value: (c) => c.timer?.nominal ?? null,
  },
  {
    name: "timer.shortest",
    unit: "s",
    title: "shortest hold within the parts' tolerances",
    formula: "nominal (1 − tol_R)(1 − tol_C)",
    inputs: [from("timer.nominal"), key("timer.resistorTolerance"), key("timer.capacitorTolerance")],
    source: MODEL("5"),
    value: (c) => c.timer?.shortest ?? null,
  },
  {
    name: "timer.longest",
    unit: "s",
    title: "longest hold within the parts' tolerances",
    formula: "nominal (1 + tol_R)(1 + tol_C)",
    inputs: [from("timer.nominal"), key("timer.resistorTolerance"), key("timer.capacitorTolerance")],
    source: MODEL("5"),
    value: (c) => c.timer?.longest ?? null,
  },
];

const fit: readonly ResultDefinition[] = [
  {
    name: "fit.heightSpare",
    unit: "m",
    title: "height left above the tallest back",
    formula: "opening height − (shoulder − sill height + height margin), least over the animals",
    inputs: ["opening.height", "opening.sillHeight", "opening.heightMargin", "animals.shoulderHeight"].map(
      key,
    ),
    source: `${MODEL("6")}; margin 5 cm: common practice, no source`,
    value: (c) => c.fit.height,
  },
  {
    name: "fit.widthSpare",
    unit: "m",
    title: "width left beside the widest chest",
    formula: "opening width − chest width − width margin, least over the animals",
    inputs: ["opening.width", "opening.widthMargin", "animals.chestWidth"].map(key),
    source: `${MODEL("6")}; margin 5 cm: common practice, no source`,
    value: (c) => c.fit.width,
  },
  {
    name: "fit.stepSpare",
    unit: "m",
    title: "what is left of the highest easy step over the sill",
    formula: "step ratio × shoulder − sill height, least over the animals",
    inputs: ["opening.sillHeight", "animals.stepRatio", "animals.shoulderHeight"].map(key),
    source: `${MODEL("6")}; ratio 0.45: common practice, no source`,
    value: (c) => c.fit.step,
  },
];

const passage: readonly ResultDefinition[] = [
  {
    name: "passage.arrivalTime",
    unit: "s",
    title: "from detection to the door",
    formula: "detection range/speed",
    inputs: ["detection.range", "animals.speed"].map(key),
    source: MODEL("6"),
    value: (c) => c.governing.passage.arrivalTime,
  },
  {
    name: "passage.passTime",
    unit: "s",
    title: "from the nose at the door until the flap is let go",
    formula: "(body length + b sin θ_h)/speed",
    inputs: [
      "animals.bodyLength",
      "animals.speed",
      "animals.shoulderHeight",
      "opening.sillHeight",
      "flap.bottomClearance",
      "flap.height",
      "flap.hingeOffset",
    ].map(key),
    source: MODEL("6"),
    value: (c) => c.governing.passage.passTime,
  },
  {
    name: "passage.letGoTime",
    unit: "s",
    title: "from detection to let-go",
    formula: "arrival + pass time",
    inputs: [from("passage.arrivalTime"), from("passage.passTime")],
    source: MODEL("6"),
    value: (c) => c.governing.passage.letGoTime,
  },
  {
    name: "hold.required",
    unit: "s",
    title: "hold that lets the flap settle before it relatches, margin included",
    formula:
      "(1 + margin) × need; retriggered need = max(settle + let-go − t_p, 2 pulse intervals), one trigger: let-go + settle",
    inputs: [
      from("swing.settleTime"),
      from("passage.letGoTime"),
      key("timer.retriggers"),
      key("detection.farSideRange"),
      key("detection.pulseInterval"),
      key("study.margin"),
    ],
    source: MODEL("6"),
    value: (c) => c.holdRequired,
  },
  {
    name: "hold.setting",
    unit: "s",
    title: "what to set so that the shortest timer still holds long enough",
    formula: "hold.required × timer.nominal/timer.shortest; a first setting, no reliability claimed",
    inputs: [from("hold.required"), from("timer.nominal"), from("timer.shortest")],
    source: MODEL("6"),
    value: (c) => c.hold?.setting ?? null,
  },
];

export const ELECTRICAL_RESULTS: readonly ResultDefinition[] = [
  ...solenoid,
  ...supply,
  ...timer,
  ...fit,
  ...passage,
];
