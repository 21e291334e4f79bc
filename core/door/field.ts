/**
 * What the schema says about one key of the door file: its kind, its range, its default and its meaning. The reader,
 * the forms, `--explain`, the tolerances and the README all take it from here.
 */
import type { Dimension } from "../quantity/dimensions.ts";

/** A closed interval in SI units (temperatures in °C). */
export interface Range {
  readonly min: number;
  readonly max: number;
  /** The upper end itself is outside (reliability). */
  readonly maxOpen?: boolean;
}

/** The field is asked for only where another key of its section has one of these values. */
export interface Condition {
  readonly key: string;
  readonly is: readonly string[];
}

/** The values of one section as read so far, by key; numbers are SI and NaN where the file's entry was wrong. */
export type SectionValues = Readonly<Record<string, unknown>>;

export type Default =
  | { readonly kind: "required"; readonly when?: Condition }
  /** As it would stand in the file. */
  | { readonly kind: "value"; readonly value: string | number | boolean }
  /** Worked out from the section's other keys; `index` is the place in a list of sections. */
  | {
      readonly kind: "computed";
      readonly words: string;
      readonly from: (section: SectionValues, index: number) => unknown;
    }
  /** Without it the value is `null`. */
  | { readonly kind: "absent"; readonly words: string };

interface FieldBase {
  /** One sentence for people. */
  readonly doc: string;
  readonly default: Default;
}

export interface QuantityField extends FieldBase {
  readonly kind: "quantity";
  readonly dimension: Dimension;
  readonly range: Range;
}

export interface NumberField extends FieldBase {
  readonly kind: "number";
  readonly whole: boolean;
  readonly range: Range;
}

export interface ChoiceField extends FieldBase {
  readonly kind: "choice";
  readonly options: readonly string[];
}

export interface TextField extends FieldBase {
  readonly kind: "text";
}

export interface FlagField extends FieldBase {
  readonly kind: "flag";
}

/** A list of sections of one form. */
export interface ListField {
  readonly kind: "list";
  readonly doc: string;
  readonly fields: Fields;
  readonly fewest: number;
  readonly most: number;
  /** What one entry is called. */
  readonly entry: string;
}

/** A curve as a list of pairs, each pair the named columns in order; the first column rises. */
export interface CurveField {
  readonly kind: "curve";
  readonly doc: string;
  readonly columns: readonly { readonly key: string; readonly field: QuantityField }[];
  readonly fewest: number;
  readonly most: number;
}

/** `study.tolerances`: any numeric key of the door, and how it spreads. */
export interface TolerancesField {
  readonly kind: "tolerances";
  readonly doc: string;
}

export type LeafField = QuantityField | NumberField | ChoiceField | TextField | FlagField;
export type NumericField = QuantityField | NumberField;
export type Field = LeafField | ListField | CurveField | TolerancesField;
export type Fields = Readonly<Record<string, Field>>;

export interface SectionSchema {
  readonly key: string;
  readonly doc: string;
  /** "required": an error without; "default": read as if empty; "optional": `null` without. */
  readonly presence: "required" | "default" | "optional";
  readonly shape: { readonly kind: "section"; readonly fields: Fields } | ListField;
}

export const required: Default = { kind: "required" };

export function requiredWhen(key: string, ...is: string[]): Default {
  return { kind: "required", when: { key, is } };
}

export function quantity(
  dimension: Dimension,
  range: Range,
  fallback: Default | string,
  doc: string,
): QuantityField {
  return { kind: "quantity", dimension, range, default: asDefault(fallback), doc };
}

export function number(range: Range, fallback: Default | number, doc: string): NumberField {
  return { kind: "number", whole: false, range, default: asDefault(fallback), doc };
}

export function count(range: Range, fallback: number, doc: string): NumberField {
  return { kind: "number", whole: true, range, default: asDefault(fallback), doc };
}

/** The first option is the default. */
export function choice(options: readonly [string, ...string[]], doc: string): ChoiceField {
  return { kind: "choice", options, default: asDefault(options[0]), doc };
}

export function words(fallback: Default | string, doc: string): TextField {
  return { kind: "text", default: asDefault(fallback), doc };
}

export function flag(fallback: boolean, doc: string): FlagField {
  return { kind: "flag", default: asDefault(fallback), doc };
}

function asDefault(fallback: Default | string | number | boolean): Default {
  return typeof fallback === "object" ? fallback : { kind: "value", value: fallback };
}

/** Whether a number, NaN and infinities included, lies in a range. */
export function inRange(value: number, { min, max, maxOpen = false }: Range): boolean {
  return value >= min && (maxOpen ? value < max : value <= max);
}
