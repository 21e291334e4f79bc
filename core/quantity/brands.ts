/**
 * Branded SI numbers. A brand is only a name on a number: formulas take and give plain numbers, and the
 * `Door` says by its types which unit each of its values is in. The one place that turns text into these
 * is `quantity.ts`; nothing else converts units.
 */
declare const unit: unique symbol;
/** A number in the SI unit named by `U`. */
export type Si<U extends string> = number & { readonly [unit]: U };

export type Metres = Si<"m">;
export type Kilograms = Si<"kg">;
export type Seconds = Si<"s">;
export type Radians = Si<"rad">;
export type RadiansPerSecond = Si<"rad/s">;
export type MetresPerSecond = Si<"m/s">;
export type KilogramsPerCubicMetre = Si<"kg/m^3">;
export type NewtonMetres = Si<"N m">;
export type NewtonMetreSeconds = Si<"N m s/rad">;
export type Newtons = Si<"N">;
export type Pascals = Si<"Pa">;
export type Teslas = Si<"T">;
/** Temperatures are kept in degrees Celsius: every formula of the model uses them so. */
export type Celsius = Si<"degC">;
export type Volts = Si<"V">;
export type Amperes = Si<"A">;
export type Ohms = Si<"ohm">;
export type Henries = Si<"H">;
export type Farads = Si<"F">;
export type KelvinsPerWatt = Si<"K/W">;
export type Ratio = Si<"1">;

/** Marks a plain number as being in the unit its place asks for (tests, computed values). */
export function si<U extends string>(value: number): Si<U> {
  return value as Si<U>;
}
