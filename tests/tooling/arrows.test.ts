// The arrows between the rooms are lint errors when broken. Every pair of folders is tried in a copy of the
// configuration, so that a rule which silently matches nothing is found out.
import { execFileSync } from "node:child_process";
import {
  copyFileSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, posix, relative, resolve } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";

const root = resolve(import.meta.dirname, "../..");

const SWING = ["core/parts", "core/door", "core/quantity"];
const PASSAGE = ["core/swing", ...SWING];
const STUDY = ["core/passage", ...PASSAGE];
const SHEET = ["core/review", "core/study", ...STUDY];
const EVERY_PURE_ROOM = ["core/sheet", ...SHEET];

/** What each folder may import from; its own files always. */
const MAY_USE: Readonly<Record<string, readonly string[]>> = {
  "core/quantity": [],
  "core/door": ["core/quantity"],
  "core/parts": ["core/door", "core/quantity"],
  "core/swing": SWING,
  "core/passage": PASSAGE,
  "core/study": STUDY,
  "core/review": STUDY,
  "core/sheet": SHEET,
  "core/cli": EVERY_PURE_ROOM,
  renderer: EVERY_PURE_ROOM,
  electron: EVERY_PURE_ROOM,
};
const FOLDERS = Object.keys(MAY_USE);
const TARGETS = [...FOLDERS, "tests"];

/** Module names from outside, and who may use them. */
const OUTSIDE: readonly { module: string; allowedIn: readonly string[] }[] = [
  { module: "node:fs", allowedIn: ["core/cli", "electron"] },
  { module: "fs", allowedIn: ["core/cli", "electron"] },
  { module: "react", allowedIn: ["renderer"] },
  { module: "react-dom/client", allowedIn: ["renderer"] },
  { module: "three", allowedIn: ["renderer"] },
  { module: "three/addons/a.js", allowedIn: ["renderer"] },
  { module: "@react-three/fiber", allowedIn: ["renderer"] },
  { module: "zustand", allowedIn: ["renderer"] },
  { module: "electron", allowedIn: ["electron"] },
  { module: "fast-check", allowedIn: FOLDERS },
];

const RULES = new Set([
  "lint/style/noRestrictedImports",
  "lint/correctness/noNodejsModules",
  "lint/style/noRestrictedGlobals",
  "lint/suspicious/noImportCycles",
]);

let folder = "";
let broken: ReadonlySet<string> = new Set();

interface Trial {
  readonly file: string;
  readonly text: string;
}

const slug = (text: string): string => text.replaceAll(/[^a-z]+/g, "-");

const fileFor = (from: string, what: string): string => `${from}/${slug(what)}.ts`;

const importing = (module: string): string => `export * from "${module}";\n`;

function importTrials(): Trial[] {
  const trials: Trial[] = [];
  for (const from of FOLDERS) {
    for (const to of TARGETS) {
      const up = posix.relative(from, to) || ".";
      trials.push({ file: fileFor(from, `to ${to}`), text: importing(`${up}/x.ts`) });
      // From a folder further in the way up is longer.
      trials.push({ file: fileFor(`${from}/inner`, `to ${to}`), text: importing(`../${up}/x.ts`) });
    }
    for (const { module } of OUTSIDE)
      trials.push({ file: fileFor(from, `out ${module}`), text: importing(module) });
  }
  return trials;
}

const FORMS: readonly { form: string; text: string }[] = [
  { form: "static", text: 'import { x } from "../swing/x.ts";\nexport const y = x;\n' },
  { form: "type", text: 'import type { X } from "../swing/x.ts";\nexport type Y = X;\n' },
  { form: "named export", text: 'export { x } from "../swing/x.ts";\n' },
  { form: "dynamic", text: 'export const x = import("../swing/x.ts");\n' },
  { form: "folder", text: 'export * from "../swing";\n' },
];

const IMPURE: readonly { name: string; text: string }[] = [
  { name: "clock", text: "export const now = (): number => Date.now();\n" },
  { name: "stop watch", text: "export const now = (): number => performance.now();\n" },
  { name: "process", text: "export const id = (): number => process.pid;\n" },
  { name: "window", text: "export const w = (): number => window.innerWidth;\n" },
  { name: "document", text: "export const t = (): string => document.title;\n" },
  { name: "console", text: 'export const say = (): void => console.log("x");\n' },
  { name: "timer", text: "export const later = (f: () => void): unknown => setTimeout(f, 1);\n" },
];

function otherTrials(): Trial[] {
  const bridge = posix.relative("renderer", "electron/bridge.ts");
  return [
    { file: "renderer/bridge-type.ts", text: `import type { B } from "${bridge}";\nexport type C = B;\n` },
    {
      file: "renderer/shell.ts",
      text: 'import type { B } from "../electron/main.ts";\nexport type C = B;\n',
    },
    { file: "core/unknown/to-quantity.ts", text: importing("../quantity/x.ts") },
    { file: "core/loose.ts", text: importing("./quantity/x.ts") },
    { file: "tests/anything.ts", text: importing("../core/cli/x.ts") + importing("node:fs") },
    {
      file: "core/swing/cycle-a.ts",
      text: 'import { b } from "./cycle-b.ts";\nexport const a = (): number => b();\n',
    },
    {
      file: "core/swing/cycle-b.ts",
      text: 'import { a } from "./cycle-a.ts";\nexport const b = (): number => a();\n',
    },
    ...FORMS.map(({ form, text }) => ({
      file: fileFor("core/door/forms", form),
      text: text.replace("../", "../../"),
    })),
    ...IMPURE.flatMap(({ name, text }) => [
      { file: fileFor("core/parts", name), text },
      { file: fileFor("core/cli", name), text },
    ]),
  ];
}

/** Files in which the linter found a broken arrow. */
function lint(cwd: string): Set<string> {
  const biome = join(root, "node_modules/@biomejs/biome/bin/biome");
  const args = [biome, "lint", "--reporter=json", "--max-diagnostics=none", "."];
  let output: string;
  try {
    output = execFileSync(process.execPath, args, {
      cwd,
      encoding: "utf8",
      stdio: "pipe",
      maxBuffer: 1 << 26,
    });
  } catch (error) {
    output = (error as { stdout: string }).stdout;
  }
  const report = JSON.parse(output) as { diagnostics: { category: string; location: { path: string } }[] };
  return new Set(report.diagnostics.filter((d) => RULES.has(d.category)).map((d) => d.location.path));
}

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "arrows-"));
  for (const name of [".biome.jsonc", ".gitignore"]) copyFileSync(join(root, name), join(folder, name));
  for (const { file, text } of [...importTrials(), ...otherTrials()]) {
    mkdirSync(dirname(join(folder, file)), { recursive: true });
    writeFileSync(join(folder, file), text);
  }
  broken = lint(folder);
});

afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe("arrows between folders", () => {
  for (const from of FOLDERS) {
    for (const to of TARGETS) {
      const legal = from === to || MAY_USE[from]?.includes(to) === true;
      test(`${from} ${legal ? "may" : "must not"} import from ${to}`, () => {
        expect(broken.has(fileFor(from, `to ${to}`))).toBe(!legal);
        expect(broken.has(fileFor(`${from}/inner`, `to ${to}`))).toBe(!legal);
      });
    }
  }

  test("every folder of the core has its rule", () => {
    const rooms = readdirSync(join(root, "core"), { withFileTypes: true })
      .filter((entry) => entry.isDirectory())
      .map((entry) => `core/${entry.name}`);
    expect(rooms.filter((name) => !FOLDERS.includes(name))).toEqual([]);
  });

  test("a folder without a rule, and a file outside every room, may import nothing", () => {
    expect(broken).toContain("core/unknown/to-quantity.ts");
    expect(broken).toContain("core/loose.ts");
  });

  test("of the shell the page sees the bridge's type alone", () => {
    expect(broken).not.toContain("renderer/bridge-type.ts");
    expect(broken).toContain("renderer/shell.ts");
  });

  test("tests may import anything", () => expect(broken).not.toContain("tests/anything.ts"));

  test("imports in a circle are refused", () => {
    expect(broken).toContain("core/swing/cycle-a.ts");
    expect(broken).toContain("core/swing/cycle-b.ts");
  });

  test.each(FORMS)("the $form form of an import is caught", ({ form }) => {
    expect(broken).toContain(fileFor("core/door/forms", form));
  });
});

describe("modules from outside", () => {
  for (const { module, allowedIn } of OUTSIDE) {
    for (const from of FOLDERS) {
      const legal = allowedIn.includes(from);
      test(`${from} ${legal ? "may" : "must not"} import ${module}`, () => {
        expect(broken.has(fileFor(from, `out ${module}`))).toBe(!legal);
      });
    }
  }
});

describe("purity of the core", () => {
  test.each(IMPURE)("$name: refused in the core, allowed on the command line", ({ name }) => {
    expect(broken).toContain(fileFor("core/parts", name));
    expect(broken).not.toContain(fileFor("core/cli", name));
  });
});

describe("what the linter cannot see", () => {
  const sources = readdirSync(join(root, "core"), { recursive: true, encoding: "utf8" })
    .filter((name) => /\.tsx?$/.test(name))
    .map((name) => ({ name: posix.join("core", name.replaceAll("\\", "/")), text: "" }))
    .map(({ name }) => ({ name, text: readFileSync(join(root, name), "utf8") }));

  const folderOf = (file: string): string | undefined =>
    TARGETS.find((name) => file === name || file.startsWith(`${name}/`));

  test("no quoted path, such as a type's import or a worker's address, leaves a room the wrong way", () => {
    const wrong: string[] = [];
    for (const { name, text } of sources) {
      const from = folderOf(name) ?? "";
      for (const [, path = ""] of text.matchAll(/["'](\.\.?\/[^"'\s]*)["']/g)) {
        const to = folderOf(relative(root, resolve(root, dirname(name), path)));
        if (to !== undefined && to !== from && MAY_USE[from]?.includes(to) !== true)
          wrong.push(`${name}: ${path}`);
      }
    }
    expect(wrong).toEqual([]);
  });

  test("no chance but a seeded one", () => {
    const guilty = sources.filter(
      ({ name, text }) => folderOf(name) !== "core/cli" && /Math\.random/.test(text),
    );
    expect(guilty.map(({ name }) => name)).toEqual([]);
  });
});
