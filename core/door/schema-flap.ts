/** The schema's first half: who goes through, the opening, and the flap with all that acts on its swing. */
import { STANDARD_GRAVITY } from "../quantity/constants.ts";
import type { Air, Animal, Damper, ExtraMass, Flap, Hinge, Magnets, Opening, Seal } from "./door.ts";
import {
  choice,
  count,
  type Field,
  type ListField,
  number,
  quantity,
  required,
  requiredWhen,
  type SectionValues,
  words,
} from "./field.ts";
import { materialNamed } from "./materials.ts";
import * as R from "./ranges.ts";

/** A value of a section that is a number, NaN where it was wrong. */
function numberIn(section: SectionValues, key: string): number {
  const value = section[key];
  return typeof value === "number" ? value : Number.NaN;
}

/** "Animal 1", "Animal 2" … */
function numbered(entry: string) {
  return words(
    { kind: "computed", words: `"${entry} 1", "${entry} 2" …`, from: (_, index) => `${entry} ${index + 1}` },
    "What people call it.",
  );
}

const animalFields = {
  name: numbered("Animal"),
  shoulderHeight: quantity("length", R.LENGTH, required, "Height at the shoulder, standing."),
  chestWidth: quantity("length", R.LENGTH, required, "Width across the chest, fur pressed flat."),
  bodyLength: quantity("length", R.LENGTH, required, "Length from nose to tail base, standing."),
  mass: quantity("mass", R.MASS, required, "Body mass."),
  speed: quantity("speed", R.SPEED, "1 m/s", "Walking speed through the door."),
  stepRatio: number(
    { min: 0, max: 10 },
    0.45,
    "Highest comfortable step as a share of the shoulder height (common practice).",
  ),
  pushHeight: quantity(
    "length",
    R.LENGTH,
    {
      kind: "computed",
      words: "0.9 × shoulder height",
      from: (animal) => 0.9 * numberIn(animal, "shoulderHeight"),
    },
    "Height at which the animal pushes the flap.",
  ),
  comfortablePush: quantity(
    "force",
    R.FORCE,
    {
      kind: "computed",
      words: "10 % of the body weight",
      from: (animal) => 0.1 * numberIn(animal, "mass") * STANDARD_GRAVITY,
    },
    "Force the animal is content to push with (the default is an assumption).",
  ),
} satisfies Record<keyof Animal, Field>;

export const animals: ListField = {
  kind: "list",
  doc: "The animals that use the door, at least one.",
  fields: animalFields,
  fewest: 1,
  most: 100,
  entry: "animal",
};

export const opening = {
  width: quantity("length", R.LENGTH, required, "Clear width of the opening."),
  height: quantity("length", R.LENGTH, required, "Clear height of the opening."),
  sillHeight: quantity(
    "length",
    R.LENGTH_OR_ZERO,
    required,
    "Height of the opening's lower edge above the floor.",
  ),
  outOfPlumb: quantity(
    "angle",
    R.PLUMB,
    "0 deg",
    "Tilt of the frame; positive where the flap hangs towards the outdoor side.",
  ),
  heightMargin: quantity("length", R.LENGTH_OR_ZERO, "5 cm", "Air wanted above the back (common practice)."),
  widthMargin: quantity(
    "length",
    R.LENGTH_OR_ZERO,
    "5 cm",
    "Air wanted beside the chest, both sides together (common practice).",
  ),
} satisfies Record<keyof Opening, Field>;

const extraMassFields = {
  name: numbered("Mass"),
  mass: quantity(
    "mass",
    R.MASS_OR_ZERO,
    required,
    "Mass of what is fixed to the flap: strike, weight bar, trim.",
  ),
  distanceFromHinge: quantity(
    "length",
    R.LENGTH_OR_ZERO,
    required,
    "Its centre's distance below the hinge axis.",
  ),
} satisfies Record<keyof ExtraMass, Field>;

export const flap = {
  width: quantity("length", R.LENGTH, required, "Width of the flap's plate."),
  height: quantity("length", R.LENGTH, required, "Height of the flap's plate."),
  thickness: quantity("length", R.LENGTH, required, "Thickness of the flap's plate."),
  material: words(
    {
      kind: "computed",
      words: "polycarbonate, or none where a density is given",
      from: (section) => (section.density === undefined ? "polycarbonate" : ""),
    },
    "Material of the plate, by a name of the materials table.",
  ),
  density: quantity(
    "density",
    R.SOLID_DENSITY,
    {
      kind: "computed",
      words: "the material's",
      from: (section) => materialNamed(String(section.material))?.density ?? Number.NaN,
    },
    "Density of the plate; it overrides the material's.",
  ),
  hingeOffset: quantity(
    "length",
    R.LENGTH_OR_ZERO,
    required,
    "From the hinge axis down to the plate's top edge.",
  ),
  bottomClearance: quantity(
    "length",
    R.LENGTH_OR_ZERO,
    "5 mm",
    "Gap between the flap's bottom edge and the sill.",
  ),
  extraMasses: {
    kind: "list",
    doc: "What else swings with the flap; its own magnets are added by themselves.",
    fields: extraMassFields,
    fewest: 0,
    most: 100,
    entry: "mass",
  },
} satisfies Record<keyof Flap, Field>;

export const hinge = {
  frictionTorque: quantity(
    "torque",
    R.TORQUE_OR_ZERO,
    required,
    "Dry friction of the hinge, the same at any speed.",
  ),
  viscousDamping: quantity(
    "angularDamping",
    R.DAMPING_OR_ZERO,
    required,
    "Friction of the hinge that grows with speed.",
  ),
  staticRatio: number({ min: 1, max: 100 }, 1, "Friction at rest over friction in motion."),
  stopAngle: quantity(
    "angle",
    R.STOP_ANGLE,
    "100 deg",
    "Angle from closed at which the stops hold the flap, both ways.",
  ),
  stopRestitution: number(R.FRACTION, 0.3, "Speed after hitting a stop over the speed before it."),
} satisfies Record<keyof Hinge, Field>;

export const seal = {
  frictionTorque: quantity(
    "torque",
    R.TORQUE_OR_ZERO,
    "0 N m",
    "Dry friction of the brush or lip seal, as a torque on the flap.",
  ),
  contactAngle: quantity("angle", R.SWING_ANGLE, "4 deg", "Angle from closed up to which the seal touches."),
} satisfies Record<keyof Seal, Field>;

export const damper = {
  coefficient: quantity(
    "angularDamping",
    R.DAMPING_OR_ZERO,
    "0 N m s/rad",
    "Damping of a rotary damper or an eddy-current plate.",
  ),
  withinAngle: quantity("angle", R.SWING_ANGLE, "180 deg", "Angle from closed up to which the damper acts."),
} satisfies Record<keyof Damper, Field>;

export const air = {
  density: quantity(
    "density",
    R.FLUID_DENSITY,
    "1.204 kg/m^3",
    "Density of the air (20 °C, sea level, where not given).",
  ),
  dragCoefficient: number(
    { min: 0, max: 100 },
    1.18,
    "Drag coefficient of the flap square to the flow (White, Fluid Mechanics).",
  ),
  swingFactor: number({ min: 0, max: 1000 }, 1, "Factor on what the flap's own motion adds to the drag."),
  windSpeed: quantity("speed", R.WIND, "0 m/s", "Wind on the flap, positive from indoors to outdoors."),
  pressureDifference: quantity(
    "pressure",
    R.PRESSURE_EITHER_WAY,
    "0 Pa",
    "Indoor less outdoor air pressure, as from a kitchen fan.",
  ),
} satisfies Record<keyof Air, Field>;

const onceChosen = requiredWhen("arrangement", "jamb", "sill");

export const magnets = {
  arrangement: choice(
    ["none", "jamb", "sill"],
    "Where the centring magnets sit: none, in the jambs, or in the sill.",
  ),
  sides: count({ min: 1, max: 100 }, 2, "Jamb: one or both side edges. Sill: positions along the width."),
  perSide: count({ min: 1, max: 100 }, 1, "Magnets per side edge; 1 in the sill."),
  pitch: quantity("length", R.LENGTH, "25 mm", "Distance between the magnets of one side, centre to centre."),
  polarity: choice(["like", "alternating"], "Whether neighbours on one side point the same way."),
  force: choice(["attract", "repel"], "Whether facing magnets attract or repel."),
  diameter: quantity("length", R.LENGTH, onceChosen, "Diameter of each disc."),
  thickness: quantity("length", R.LENGTH, onceChosen, "Thickness of each disc."),
  remanence: quantity("fluxDensity", R.REMANENCE, onceChosen, "Remanence of the magnet's grade at 20 °C."),
  gap: quantity("length", R.LENGTH, onceChosen, "Air gap between facing faces when closed."),
  distanceFromHinge: quantity(
    "length",
    R.LENGTH,
    onceChosen,
    "Jamb: hinge axis to the centre of the lowest magnet. Sill: hinge axis to the lower face of the flap's magnet.",
  ),
  temperature: quantity("temperature", R.MAGNET_TEMPERATURE, "20 degC", "Temperature of the magnets."),
} satisfies Record<keyof Magnets, Field>;
