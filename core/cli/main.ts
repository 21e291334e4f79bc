/**
 * The command line: one file per command, loaded when it is called.
 *
 * Exit codes: 0 done, 1 the door has a failing finding, 2 the call or the file is wrong (then the complaint is on standard
 * error and nothing on standard output).
 */
import { CallError } from "./call.ts";

type Command = (args: readonly string[]) => number | Promise<number>;

const COMMANDS: Readonly<Record<string, () => Promise<Command>>> = {
  review: async () => (await import("./command-review.ts")).reviewCommand,
  swing: async () => (await import("./command-swing.ts")).swingCommand,
  sheet: async () => (await import("./command-sheet.ts")).sheetCommand,
  hold: async () => (await import("./command-hold.ts")).holdCommand,
  map: async () => (await import("./command-map.ts")).mapCommand,
  best: async () => (await import("./command-best.ts")).bestCommand,
  fit: async () => (await import("./command-fit.ts")).fitCommand,
  new: async () => (await import("./command-new.ts")).newCommand,
};

const USAGE = `Swingstill computes an automatic pet door before the first hole is drilled.

  review FILE [--json] [--units metric|inch]     all of the door: figures, findings, the hold time
  review FILE --explain RESULT [--json]          how one figure comes about
  swing FILE [--hold TEXT] [--csv OUT] [--json]  one swing, and the relatch at a hold ("10 s")
  sheet FILE --out FOLDER [--units metric|inch] [--paper a4|letter] [--symbols iec|ieee] [--samples N] [--zip]
                                                 build sheet, drill template, wiring, bench card, data
  hold FILE [--samples N] [--seed S] [--json]    the tolerance study and the recommended hold
  hold FILE --part I/N [--out PART]              one part of it, for another machine
  hold --join PARTS… [--json]                    the parts joined
  map FILE --x KEY=FROM..TO:N [--y …] --of RESULT [--csv OUT] [--json]
                                                 a result over one or two inputs; with the tolerances in: sampled.settle50,
                                                 sampled.settle95, sampled.hold95, sampled.caught, sampled.restsOutside
  best FILE --over KEY=FROM..TO [--over …] [--json]
                                                 the least hold over some inputs that keeps every finding
  fit FILE MEASURED.csv [--write COPY] [--json]  hinge, seal and air values from a measured swing
  fit FILE --count --angle "60 deg" --passes 14 [--settle "9 s"] [--rest "11.2 s"] [--passes-until-still 17]
                                                 the same from what was counted: passes and --settle until the flap stays
                                                 within the bolt's play, as on the bench card
  new [--from EXAMPLE] FILE                      a door file to start from

Exit code 0: done. 1: the door has a failing finding. 2: the call or the file is wrong.
`;

const WRONG_CALL = 2;

/** Runs a command. `argv` are the words after the program's name; returns the exit code. */
export async function main(argv: readonly string[]): Promise<number> {
  const [name, ...rest] = argv;
  if (name === undefined || name === "help" || name === "--help" || rest.includes("--help")) {
    (name === undefined ? process.stderr : process.stdout).write(USAGE);
    return name === undefined ? WRONG_CALL : 0;
  }
  const load = Object.hasOwn(COMMANDS, name) ? COMMANDS[name] : undefined;
  try {
    if (load === undefined)
      throw new CallError(`unknown command "${name}". Try: ${Object.keys(COMMANDS).join(", ")}, help`);
    return await (await load())(rest);
  } catch (error) {
    if (!(error instanceof CallError)) throw error;
    process.stderr.write(`swingstill: ${error.message}\n`);
    return WRONG_CALL;
  }
}
