/** Results of the flap, the magnets, the swing, the latch and the push. Names and units are the contract's. */
import { from, key, type ResultDefinition } from "./result.ts";

const MODEL = (section: string) => `model page, section ${section}`;
const PENDULUM = "compound pendulum (Meriam and Kraige, Engineering Mechanics: Dynamics, from memory)";
const MAGNETS =
  "uniform magnetic charge on the pole faces (Furlani, Permanent Magnet and Electromechanical Devices; Vokoun et al., J. Magn. Magn. Mater. 321 (2009) 3758)";

const flapKeys = ["width", "height", "thickness", "material", "density"].map((k) => key(`flap.${k}`));
const hung = [key("flap.hingeOffset"), key("flap.extraMasses")];
const magnetKeys = [
  "arrangement",
  "sides",
  "perSide",
  "pitch",
  "polarity",
  "force",
  "diameter",
  "thickness",
  "remanence",
  "gap",
  "distanceFromHinge",
  "temperature",
].map((k) => key(`magnets.${k}`));
/** What the shape of the magnets' torque over the angle depends on. */
const magnetShapeKeys = [
  "arrangement",
  "perSide",
  "pitch",
  "polarity",
  "diameter",
  "thickness",
  "gap",
  "distanceFromHinge",
].map((k) => key(`magnets.${k}`));
const strengthKeys = ["remanence", "temperature"].map((k) => key(`magnets.${k}`));

/** The flap's own magnets as masses at their places. */
const magnetMassKeys = ["sides", "perSide", "diameter", "thickness"].map((k) => key(`magnets.${k}`));
const magnetPlaceKeys = ["arrangement", "pitch", "distanceFromHinge"].map((k) => key(`magnets.${k}`));
/** What gravity and dry friction do to a flap at rest. */
const holdingInputs = [
  from("flap.firstMoment"),
  key("opening.outOfPlumb"),
  key("hinge.frictionTorque"),
  key("hinge.staticRatio"),
  key("seal.frictionTorque"),
  key("seal.contactAngle"),
];
/** What wind and pressure do to it. */
const blownInputs = [key("air.density"), key("air.dragCoefficient"), key("air.pressureDifference")];
/** Where a flap can rest. */
const restInputs = [
  ...holdingInputs,
  ...blownInputs,
  key("air.windSpeed"),
  key("hinge.stopAngle"),
  ...magnetKeys,
];
const motionInputs = [
  from("flap.inertia"),
  ...restInputs,
  key("hinge.viscousDamping"),
  key("hinge.stopRestitution"),
  key("damper.coefficient"),
  key("damper.withinAngle"),
  key("air.swingFactor"),
  key("release.speed"),
];
/** z_h, the hinge above the floor. */
const hingeHeightKeys = [
  key("opening.sillHeight"),
  key("flap.bottomClearance"),
  key("flap.height"),
  key("flap.hingeOffset"),
];
const slotAngleKeys = [key("latch.offset"), key("latch.distanceFromHinge")];
const EQUATION =
  "I θ̈ = −S g sin(θ − δ) + τ_mag(θ) + τ_air(θ, ω) + τ_Δp(θ) − (c + c_d·[|θ| ≤ θ_d]) ω − τ_fric(θ) sgn ω";

const flap: readonly ResultDefinition[] = [
  {
    name: "flap.mass",
    unit: "kg",
    title: "everything that swings",
    formula: "m = ρ W H t + Σ m_i, the flap's own magnets at 7500 kg/m³ among the m_i",
    inputs: [...flapKeys, key("flap.extraMasses"), ...magnetMassKeys],
    source: MODEL("1"),
    value: (c) => c.body.mass,
  },
  {
    name: "flap.inertia",
    unit: "kg m^2",
    title: "moment of inertia about the hinge",
    formula: "I = m_p (H² + t²)/12 + m_p (o + H/2)² + Σ m_i r_i²",
    inputs: [...flapKeys, ...hung, ...magnetMassKeys, ...magnetPlaceKeys],
    source: `${MODEL("1")}; parallel axes`,
    value: (c) => c.body.inertia,
  },
  {
    name: "flap.firstMoment",
    unit: "kg m",
    title: "mass times distance below the hinge",
    formula: "S = m_p (o + H/2) + Σ m_i r_i",
    inputs: [...flapKeys, ...hung, ...magnetMassKeys, ...magnetPlaceKeys],
    source: MODEL("1"),
    value: (c) => c.body.firstMoment,
  },
  {
    name: "flap.smallAnglePeriod",
    unit: "s",
    title: "one full swing, small angles, gravity alone",
    formula: "T0 = 2π √(I/(S g))",
    inputs: [from("flap.inertia"), from("flap.firstMoment")],
    source: PENDULUM,
    value: (c) => c.body.smallAnglePeriod,
  },
];

const magnets: readonly ResultDefinition[] = [
  {
    name: "magnets.peakTorque",
    unit: "N m",
    title: "strongest turning of the magnets on the flap, back to the centre where they attract",
    formula:
      "max over 0…θ_stop of |τ_mag(θ)|, τ_mag = −dE/dθ over every facing pair of one side, times sides",
    inputs: [...magnetShapeKeys, key("magnets.sides"), ...strengthKeys, key("hinge.stopAngle")],
    source: MAGNETS,
    value: (c) => c.centring?.figures.greatestTorque ?? null,
  },
  {
    name: "magnets.peakAngle",
    unit: "rad",
    title: "where the magnets turn the flap most",
    formula: "the θ of magnets.peakTorque",
    inputs: [...magnetShapeKeys, key("hinge.stopAngle")],
    source: MAGNETS,
    value: (c) => c.centring?.figures.greatestAngle ?? null,
  },
  {
    name: "magnets.centreStiffness",
    unit: "N m/rad",
    title: "how steeply the magnets pull at the centre",
    formula: "−dτ_mag/dθ at θ = 0",
    inputs: magnetKeys,
    source: MAGNETS,
    value: (c) => c.centring?.figures.centreStiffness ?? null,
  },
  {
    name: "magnets.axialForce",
    unit: "N",
    title: "pull between one facing pair, flap closed (attracting positive)",
    formula: "−dE/d(gap) of one pair at θ = 0",
    inputs: [
      key("magnets.force"),
      key("magnets.diameter"),
      key("magnets.thickness"),
      key("magnets.gap"),
      ...strengthKeys,
    ],
    source: MAGNETS,
    value: (c) => c.centring?.figures.axialForce ?? null,
  },
  {
    name: "magnets.fluxIndex",
    unit: "kG^2 mm^2",
    title: "swallow hazard of one loose magnet",
    formula: "(greatest flux density normal to the face, 0.38 mm above it, 20 °C, in kG)² × pole area in mm²",
    inputs: [key("magnets.diameter"), key("magnets.thickness"), key("magnets.remanence")],
    source: "16 CFR 1262, ASTM F963, ISO 8124-1: below 50 kG² mm² (probe depth from memory)",
    value: (c) => c.centring?.figures.fluxIndex ?? null,
  },
];

const swing: readonly ResultDefinition[] = [
  {
    name: "swing.releaseAngle",
    unit: "rad",
    title: "where the flap is let go",
    formula:
      "θ_h = acos((z_h − shoulder)/b), 0 if the edge clears the back, at most the stop; `release.angle` where given. Its sign: the direction that settles later, where the two differ",
    inputs: [
      key("release.angle"),
      key("animals.shoulderHeight"),
      ...hingeHeightKeys,
      key("hinge.stopAngle"),
      from("swing.settleTime"),
    ],
    source: MODEL("6"),
    value: (c) => c.governing.swing.releaseAngle,
  },
  {
    name: "swing.settleTime",
    unit: "s",
    title: "from let-go until the flap is inside the bolt's play to stay",
    formula: `last time |θ − θ_off| comes down to θ_c before rest; ${EQUATION}`,
    inputs: [...motionInputs, from("swing.releaseAngle"), from("latch.captureAngle"), ...slotAngleKeys],
    source: MODEL("2"),
    value: (c) => c.governing.swing.settleTime,
  },
  {
    name: "swing.restTime",
    unit: "s",
    title: "from let-go until the flap stops for good",
    formula: "first moment with ω = 0 and |τ_0(θ)| ≤ k_s τ_fric(θ), or at a stop it is pressed against",
    inputs: [...motionInputs, from("swing.releaseAngle")],
    source: MODEL("2"),
    value: (c) => c.governing.swing.restTime,
  },
  {
    name: "swing.restAngle",
    unit: "rad",
    title: "where the flap stops for good",
    formula: "θ at swing.restTime",
    inputs: [...motionInputs, from("swing.releaseAngle")],
    source: MODEL("2"),
    value: (c) => c.governing.swing.restAngle,
  },
  {
    name: "swing.deadBand",
    unit: "rad",
    title: "how far off the slot's centre friction can hold the flap",
    formula: "max |θ − θ_off| over the connected set of |τ_0(θ)| ≤ k_s τ_fric(θ) nearest θ_off",
    inputs: [...restInputs, ...slotAngleKeys],
    source: MODEL("2"),
    value: (c) => c.deadBand,
  },
  {
    name: "swing.centrePasses",
    unit: "1",
    title: "passes through the centre before it settles: what you can count",
    formula: "crossings of θ = θ_off from let-go to swing.settleTime (to rest if it never settles)",
    inputs: [...motionInputs, from("swing.releaseAngle"), from("swing.settleTime"), ...slotAngleKeys],
    source: MODEL("2"),
    value: (c) => c.governing.swing.centrePasses,
  },
];

const startInputs = [
  from("flap.inertia"),
  from("flap.firstMoment"),
  key("opening.outOfPlumb"),
  ...magnetKeys,
  from("swing.releaseAngle"),
  key("release.speed"),
];
const LEDGER = "initial = hinge + viscous + seal + air + stops + left";
const energy: readonly ResultDefinition[] = (
  [
    ["initial", "mechanical energy at let-go", "gravity + magnets + ½ I ω², zero at rest at θ = 0"],
    ["hinge", "gone into the hinge's dry friction", "∫ τ_hinge |ω| dt"],
    ["viscous", "gone into hinge damping and damper", "∫ (c + c_d) ω² dt"],
    ["seal", "gone into the seal", "∫ τ_seal |ω| dt while |θ| ≤ θ_seal"],
    ["air", "gone into the air (negative where wind or pressure gave)", "−∫ (τ_air + τ_Δp) ω dt"],
    ["stops", "gone into the stops", "Σ ½ I ω² (1 − e²)"],
    ["left", "mechanical energy at the end", "gravity + magnets + ½ I ω²"],
  ] as const
).map(([part, title, formula]) => ({
  name: `energy.${part}`,
  unit: "J",
  title,
  formula: `${formula}; ${LEDGER}`,
  inputs: part === "initial" ? startInputs : [...motionInputs, from("swing.releaseAngle")],
  source: MODEL("2"),
  value: (c) => c.governing.swing.ledger[part],
}));

const latch: readonly ResultDefinition[] = [
  {
    name: "latch.captureAngle",
    unit: "rad",
    title: "how far off the slot's centre the bolt still finds it",
    formula: "θ_c = asin((w_s − w_b)/(2 r_l))",
    inputs: [key("latch.slotWidth"), key("latch.boltWidth"), key("latch.distanceFromHinge")],
    source: MODEL("4"),
    value: (c) => c.latch?.capture ?? null,
  },
  {
    name: "latch.blockAngle",
    unit: "rad",
    title: "beyond this the bolt comes up beside the flap",
    formula: "θ_b = asin((h + w_b/2)/r_l)",
    inputs: [key("latch.edgeHalfWidth"), key("latch.boltWidth"), key("latch.distanceFromHinge")],
    source: MODEL("4"),
    value: (c) => c.latch?.block ?? null,
  },
  {
    name: "latch.boltRiseTime",
    unit: "s",
    title: "from release of the coil to least engagement",
    formula: "√(2 (g0 + e) m_b/F), F = F_s ∓ m_b g",
    inputs: ["tipGap", "engagement", "boltMass", "springForce", "boltPoints"].map((k) => key(`latch.${k}`)),
    source: MODEL("4"),
    value: (c) => c.latch?.toEngagement ?? null,
  },
];

const push: readonly ResultDefinition[] = [
  {
    name: "push.force",
    unit: "N",
    title: "what the animal must push with to get through",
    formula:
      "max over 0…min(θ_h, acos((z_h − h_push)/b)) of (S g sin(θ + |δ|) − τ_mag + k_s τ_fric)/(z_h − h_push)",
    inputs: [
      ...holdingInputs,
      ...magnetKeys,
      ...hingeHeightKeys,
      key("animals.pushHeight"),
      key("animals.shoulderHeight"),
    ],
    source: MODEL("6"),
    value: (c) => c.pushes[c.hardestPush].force,
  },
  {
    name: "push.limit",
    unit: "N",
    title: "what that animal pushes with at ease",
    formula: "`comfortablePush`, by default 10 % of its weight",
    inputs: [key("animals.comfortablePush"), key("animals.mass")],
    source: `${MODEL("6")} (assumption)`,
    value: (c) => c.pushes[c.hardestPush].limit,
  },
  {
    name: "push.energy",
    unit: "J",
    title: "what a walking animal also puts into the flap",
    formula: "½ I (speed/(z_h − h_push))²",
    inputs: [
      from("flap.inertia"),
      key("animals.speed"),
      key("animals.pushHeight"),
      key("animals.shoulderHeight"),
      ...hingeHeightKeys,
    ],
    source: MODEL("6"),
    value: (c) => c.pushes[c.hardestPush].energy,
  },
  {
    name: "wind.gustSpeed",
    unit: "m/s",
    title: "the wind that opens the unlatched flap past the bolt's play",
    formula:
      "least of both directions s: V² = max over 0…θ_c + s θ_off of [(S g sin(φ − s δ) + |τ_mag| − s τ_Δp + k_s τ_fric)/cos² φ]/(½ ρ_a C_d W (b² − o²)/2)",
    inputs: [...holdingInputs, ...blownInputs, ...magnetKeys, from("latch.captureAngle"), ...slotAngleKeys],
    source: `${MODEL("6")}; velocity pressure 0.613 V² (ASCE 7)`,
    value: (c) => c.gust?.speed ?? null,
  },
];

export const MECHANICAL_RESULTS: readonly ResultDefinition[] = [
  ...flap,
  ...magnets,
  ...swing,
  ...energy,
  ...latch,
  ...push,
];
