/** A measured swing out of a text file: a trace of time and angle, or turning points. */
import type { Measured, Turns } from "./fit-types.ts";
import { cellNumber, type Row, readTable, type Table } from "./table.ts";
import type { Samples } from "./trace-problem.ts";

export interface MeasuredFault {
  /** As an editor counts, from 1; 0 where the file as a whole is meant. */
  readonly line: number;
  /** A sentence that names the line. */
  readonly message: string;
}

export type MeasuredRead =
  | {
      readonly ok: true;
      readonly measured: Measured;
      /** Lines without an angle: nothing was seen there. */
      readonly gaps: number;
    }
  | { readonly ok: false; readonly errors: readonly MeasuredFault[] };

/** Longest text read, in characters, and most faults told. */
const LONGEST = 50_000_000;
const MOST_FAULTS = 20;

type Role = "time" | "angle" | "turn";

interface Column {
  readonly role: Role;
  readonly place: number;
  /** SI units in one of the column's. */
  readonly scale: number;
}

const DEGREE = Math.PI / 180;
const UNITS: Readonly<Record<Role, Readonly<Record<string, number>>>> = {
  time: {
    s: 1,
    sec: 1,
    second: 1,
    seconds: 1,
    ms: 1e-3,
    millisecond: 1e-3,
    milliseconds: 1e-3,
    us: 1e-6,
    min: 60,
  },
  angle: {
    deg: DEGREE,
    degree: DEGREE,
    degrees: DEGREE,
    "°": DEGREE,
    rad: 1,
    radian: 1,
    radians: 1,
    mrad: 1e-3,
  },
  turn: {},
};
const PLAIN: Readonly<Record<Role, number>> = { time: 1, angle: DEGREE, turn: 1 };
const WORDS: Readonly<Record<Role, RegExp>> = {
  time: /^(t|time|timestamp|zeit|temps|tiempo)$/,
  angle: /^(angle|theta|θ|phi|φ|alpha|winkel|angulo|ángulo)$/,
  turn: /^(turn|turns|turning|turningpoint|peak|extreme|n)$/,
};
const COLUMNS =
  "columns time_s and angle_deg for a trace, or turn and angle_deg for turning points (other units: time_ms, angle_rad)";

/**
 * Reads a measured swing. Columns are found by their names, in any order and with others between; without names the first two
 * are time in s and angle in degrees, and a single one is the angles of successive turning points. Never throws; every bad line
 * is told, up to the first twenty.
 */
export function readMeasured(text: string): MeasuredRead {
  if (text.length > LONGEST) return refused(0, `The file is too large: ${text.length} characters.`);
  const table = readTable(text);
  const [head] = table.rows;
  if (head === undefined) return refused(0, `The file holds no readings; expected ${COLUMNS}.`);
  const named = head.cells.some((cell) => Number.isNaN(cellNumber(cell, table.divider)));
  const columns = named ? namedColumns(head) : plainColumns(head);
  if ("message" in columns) return { ok: false, errors: [columns] };
  const rows = named ? table.rows.slice(1) : table.rows;
  return readings(rows, columns, table.divider);
}

function refused(line: number, message: string): MeasuredRead {
  return { ok: false, errors: [{ line, message }] };
}

function namedColumns(head: Row): readonly Column[] | MeasuredFault {
  const columns: Column[] = [];
  for (const [place, name] of head.cells.entries()) {
    const column = columnOf(name, place);
    if (column !== null && !columns.some(({ role }) => role === column.role)) columns.push(column);
  }
  if (columns.some(({ role }) => role === "angle")) return columns;
  const given = head.cells.map((cell) => `"${cell.slice(0, 30)}"`).join(", ");
  return {
    line: head.line,
    message: `Line ${head.line}: no column of angles; given ${given}, expected ${COLUMNS}.`,
  };
}

/** "time_s", "t [ms]", "Angle (deg)", "theta/°": a word and perhaps a unit. */
function columnOf(name: string, place: number): Column | null {
  const parts = name
    .toLowerCase()
    .split(/[\s_()[\]/:,]+/)
    .filter((part) => part !== "");
  const role = (["time", "angle", "turn"] as const).find((one) =>
    parts.some((part) => WORDS[one].test(part)),
  );
  if (role === undefined) return null;
  const unit = parts.find((part) => Object.hasOwn(UNITS[role], part));
  return { role, place, scale: unit === undefined ? PLAIN[role] : UNITS[role][unit] };
}

function plainColumns({ line, cells }: Row): readonly Column[] | MeasuredFault {
  if (cells.length === 1) return [{ role: "angle", place: 0, scale: DEGREE }];
  if (cells.length === 2) {
    return [
      { role: "time", place: 0, scale: 1 },
      { role: "angle", place: 1, scale: DEGREE },
    ];
  }
  const message = `Line ${line}: ${cells.length} columns without names; expected a first line that names them: ${COLUMNS}.`;
  return { line, message };
}

interface Reading {
  readonly line: number;
  readonly time: number;
  readonly angle: number;
  readonly turn: number;
}

function readings(rows: readonly Row[], columns: readonly Column[], divider: Table["divider"]): MeasuredRead {
  const has = (role: Role) => columns.some((column) => column.role === role);
  const faults: MeasuredFault[] = [];
  const kept: Reading[] = [];
  let gaps = 0;
  for (const row of rows) {
    const reading = readingOf(row, columns, divider);
    if (reading === null) gaps++;
    else if ("message" in reading) faults.push(reading);
    else {
      const fault = kept.length === 0 ? null : disorder(reading, kept[kept.length - 1], columns);
      if (fault === null) kept.push(reading);
      else faults.push(fault);
    }
  }
  if (faults.length > 0) return { ok: false, errors: shortened(faults) };
  if (kept.length === 0) return refused(0, `The file holds no readings; expected ${COLUMNS}.`);
  if (has("time") && !has("turn") && !looksLikeTurns(kept)) {
    return { ok: true, measured: { kind: "trace", samples: samplesOf(kept) }, gaps };
  }
  return { ok: true, measured: { kind: "turns", turns: turnsOf(kept, has("turn"), has("time")) }, gaps };
}

function shortened(faults: readonly MeasuredFault[]): readonly MeasuredFault[] {
  if (faults.length <= MOST_FAULTS) return faults;
  const rest = faults.length - MOST_FAULTS;
  return [...faults.slice(0, MOST_FAULTS), { line: 0, message: `And ${rest} more bad lines.` }];
}

/** A row's numbers; `null` where no angle was seen. */
function readingOf(
  { line, cells }: Row,
  columns: readonly Column[],
  divider: Table["divider"],
): Reading | MeasuredFault | null {
  const found = { line, time: Number.NaN, angle: Number.NaN, turn: Number.NaN };
  let seen = true;
  for (const { role, place, scale } of columns) {
    const value = cellNumber(cells[place], divider);
    if (value === null && role === "angle") seen = false;
    else if (value === null || !Number.isFinite(value)) {
      const given = cells[place] === undefined ? "nothing" : `"${cells[place].slice(0, 30)}"`;
      return { line, message: `Line ${line}: given ${given}, expected a number in the column of ${role}s.` };
    } else found[role] = value * scale;
  }
  if (!seen) return null;
  if (columns.some(({ role }) => role === "turn") && !(Number.isInteger(found.turn) && found.turn >= 0)) {
    return { line, message: `Line ${line}: given turn ${found.turn}, expected a whole number from 0.` };
  }
  if (Math.abs(found.angle) > 2 * Math.PI) {
    const given = `${Number((found.angle / DEGREE).toPrecision(6))}°`;
    return { line, message: `Line ${line}: given an angle of ${given}, expected at most a full turn.` };
  }
  return found;
}

/** What is wrong with the order of two readings, or `null`. */
function disorder(now: Reading, before: Reading, columns: readonly Column[]): MeasuredFault | null {
  const { line } = now;
  const has = (role: Role) => columns.some((column) => column.role === role);
  if (has("time") && now.time < before.time) {
    return {
      line,
      message: `Line ${line}: time ${now.time} s is before ${before.time} s of line ${before.line}; expected times that rise.`,
    };
  }
  if (has("turn") && now.turn <= before.turn) {
    return {
      line,
      message: `Line ${line}: turn ${now.turn} after turn ${before.turn} of line ${before.line}; expected turns that rise.`,
    };
  }
  return null;
}

/** Fewest readings by which turning points are told from a trace, and the share of them that must alternate. */
const FEWEST = 4;
const ALTERNATE = 0.6;

/** Whether readings turn against the last as far as they do in a swing's turns, some missed: nobody samples a swing just so. */
function looksLikeTurns(kept: readonly Reading[]): boolean {
  if (kept.length < FEWEST) return false;
  let turns = 0;
  for (let i = 2; i < kept.length; i++) {
    const before = kept[i - 1].angle - kept[i - 2].angle;
    const now = kept[i].angle - kept[i - 1].angle;
    const size = Math.min(Math.abs(before), Math.abs(now));
    const both = Math.abs(kept[i - 1].angle) + Math.abs(kept[i - 2].angle);
    if (before * now < 0 && size > both / 2) turns++;
  }
  return turns >= ALTERNATE * (kept.length - 2);
}

function samplesOf(kept: readonly Reading[]): Samples {
  return {
    time: Float64Array.from(kept, ({ time }) => time),
    angle: Float64Array.from(kept, ({ angle }) => angle),
  };
}

function turnsOf(kept: readonly Reading[], numbered: boolean, timed: boolean): Turns {
  return {
    turn: numbered ? kept.map(({ turn }) => turn) : timed ? turnPlaces(kept) : kept.map((_, i) => i),
    angle: kept.map(({ angle }) => angle),
    time: timed ? kept.map(({ time }) => time) : null,
  };
}

/** Places of timed turns: where the time to the next is that of several half swings, those between were missed. */
function turnPlaces(kept: readonly Reading[]): number[] {
  const gaps = kept.slice(1).map(({ time }, i) => time - kept[i].time);
  const half = [...gaps].sort((a, b) => a - b)[gaps.length >> 1];
  let place = 0;
  return kept.map((_, i) => {
    if (i > 0) place += Math.max(1, Math.round(gaps[i - 1] / half));
    return place;
  });
}
