// The command line's launcher, tried in small checkouts of its own.
import { spawn } from "node:child_process";
import {
  copyFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, resolve } from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";

const root = resolve(import.meta.dirname, "../..");
let checkout = "";

function write(path: string, text: string): void {
  mkdirSync(dirname(join(checkout, path)), { recursive: true });
  writeFileSync(join(checkout, path), text);
}

const MAIN = `
export async function main(argv: readonly string[]): Promise<number> {
  console.log(argv.slice(1).join(" "));
  return Number(argv[0]);
}`;

beforeEach(() => {
  checkout = mkdtempSync(join(tmpdir(), "launch-"));
  mkdirSync(join(checkout, "core/cli"), { recursive: true });
  for (const name of ["bundle.mjs", "build.mjs", "launch.mjs", "notices.mjs"])
    copyFileSync(join(root, "core/cli", name), join(checkout, "core/cli", name));
  copyFileSync(join(root, "package.json"), join(checkout, "package.json"));
  symlinkSync(join(root, "node_modules"), join(checkout, "node_modules"), "junction");
  write("core/cli/main.ts", MAIN);
});

afterEach(() => rmSync(checkout, { recursive: true, force: true }));

interface Ended {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

function run(command: string, args: readonly string[], cwd = checkout): Promise<Ended> {
  return new Promise((done, fail) => {
    const child = spawn(command, args, { cwd, shell: process.platform === "win32" });
    let out = "";
    let err = "";
    child.stdout.on("data", (data) => {
      out += String(data);
    });
    child.stderr.on("data", (data) => {
      err += String(data);
    });
    child.on("error", fail);
    child.on("close", (code) => done({ code, out, err }));
  });
}

const launch = (...args: string[]): Promise<Ended> => run(process.execPath, ["core/cli/launch.mjs", ...args]);

const built = (): string => join(checkout, "dist/cli/main.mjs");

describe("running", () => {
  test.each([0, 1, 2])("exit code %i and the arguments pass through", async (code) => {
    expect(await launch(String(code), "two words", "--flag")).toEqual({
      code,
      out: "two words --flag\n",
      err: "",
    });
  });

  test("through npm, from a folder further in, paths start where the person stood", async () => {
    write("core/cli/main.ts", "export const main = async () => { console.log(process.cwd()); return 1; };");
    const inner = join(checkout, "doors");
    mkdirSync(inner);
    const ended = await run("npm", ["run", "-s", "swingstill", "--", "x"], inner);
    expect(ended).toMatchObject({ code: 1, err: "" });
    expect(statSync(ended.out.trim()).ino).toBe(statSync(inner).ino);
  });

  test("an error of the program itself is told, and is not the code of a failing door", async () => {
    write("core/cli/main.ts", 'export const main = async () => { throw new Error("boom"); };');
    const ended = await launch("x");
    expect(ended).toMatchObject({ code: 2, out: "" });
    expect(ended.err).toContain("boom");
  });

  test("a source that does not compile is named", async () => {
    write("core/cli/main.ts", "export const main = = 1;");
    const ended = await launch("x");
    expect(ended).toMatchObject({ code: 2, out: "" });
    expect(ended.err).toContain("core/cli/main.ts:1:20");
  });

  test("without the build tools it says what to do", async () => {
    rmSync(join(checkout, "node_modules"), { recursive: true });
    const ended = await launch("x");
    expect(ended).toMatchObject({ code: 2, out: "" });
    expect(ended.err).toContain("npm ci");
  });

  test("a reader that closes early is no error", async () => {
    write(
      "core/cli/main.ts",
      `export const main = async () => { for (let i = 0; i < 1e5; i++) console.log("line", i); return 0; };`,
    );
    const ended = await run("sh", ["-c", `"${process.execPath}" core/cli/launch.mjs x | head -n 1`]);
    expect(ended).toEqual({ code: 0, out: "line 0\n", err: "" });
  });
});

describe("building", () => {
  test("a fresh bundle is left alone", async () => {
    await launch("0");
    const before = statSync(built()).mtimeMs;
    await launch("0");
    expect(statSync(built()).mtimeMs).toBe(before);
  });

  test("a change of a source is taken up, even one dated before the bundle", async () => {
    await launch("0");
    write("core/cli/main.ts", MAIN.replace('join(" ")', 'join("-")'));
    utimesSync(join(checkout, "core/cli/main.ts"), 1, 1);
    expect((await launch("0", "a", "b")).out).toBe("a-b\n");
  });

  test("a file below assets/, as text and as data, is bundled and watched", async () => {
    write("assets/x.json", '{ "a":  1 }');
    write(
      "core/cli/main.ts",
      `import text from "../../assets/x.json?raw";
import data from "../../assets/x.json";
export const main = async () => { console.log(text, data.a); return 0; };`,
    );
    expect((await launch()).out).toBe('{ "a":  1 } 1\n');
    write("assets/x.json", '{ "a":  2 }');
    expect((await launch()).out).toBe('{ "a":  2 } 2\n');
  });

  test("the licences of bundled packages go along, and only theirs", async () => {
    write(
      "core/cli/main.ts",
      'import { strToU8 } from "fflate"; export const main = async () => { console.log(strToU8("a")[0]); return 0; };',
    );
    expect((await launch()).out).toBe("97\n");
    const notices = readFileSync(join(checkout, "dist/cli/licenses.txt"), "utf8");
    expect(notices).toMatch(/^fflate [\d.]+ \(MIT\)\n\nMIT License\n\nCopyright/);
    expect(notices).not.toContain("esbuild");
  });

  test("what is imported late is a file of its own", async () => {
    write("core/sheet/heavy.ts", 'export const heavy = "heavy";');
    write(
      "core/cli/main.ts",
      `export const main = async () => { console.log((await import("../sheet/heavy.ts")).heavy); return 0; };`,
    );
    expect((await launch()).out).toBe("heavy\n");
    expect(readFileSync(built(), "utf8")).not.toContain('"heavy"');
  });

  test("the worker stands beside the bundle", async () => {
    write(
      "core/cli/worker.ts",
      'import { parentPort } from "node:worker_threads";\nparentPort?.postMessage(42);',
    );
    write(
      "core/cli/main.ts",
      `import { once } from "node:events";
import { Worker } from "node:worker_threads";
export const main = async () => {
  const [answer] = await once(new Worker(new URL("./worker.mjs", import.meta.url)), "message");
  console.log(answer);
  return 0;
};`,
    );
    expect(await launch()).toEqual({ code: 0, out: "42\n", err: "" });
  });

  test("several at once on a fresh checkout all answer, and leave no half-written folder", async () => {
    const ended = await Promise.all(Array.from({ length: 4 }, (_, i) => launch("0", `run${i}`)));
    expect(ended.map(({ out }) => out)).toEqual(["run0\n", "run1\n", "run2\n", "run3\n"]);
    expect(readdirSync(join(checkout, "dist"))).toEqual(["cli"]);
  });

  test("a chunk nobody can still be using is removed", async () => {
    write("dist/cli/old-AAAA.mjs", "//sources:old");
    write("dist/cli/recent-AAAA.mjs", "//sources:old");
    utimesSync(join(checkout, "dist/cli/old-AAAA.mjs"), 1, 1);
    await launch("0");
    expect(existsSync(join(checkout, "dist/cli/old-AAAA.mjs"))).toBe(false);
    expect(existsSync(join(checkout, "dist/cli/recent-AAAA.mjs"))).toBe(true);
  });
});
