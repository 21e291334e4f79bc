import { describe, expect, test } from "vitest";
import { menuPlan, type PlannedCommand, type PlannedItem, type Role } from "../../electron/menu-plan.ts";

const NOTHING = { undo: null, redo: null };
const flat = (items: readonly PlannedItem[]): PlannedItem[] =>
  items.flatMap((item) => (typeof item === "object" && "items" in item ? flat(item.items) : [item]));

const plan = (
  mac: boolean,
  packaged: boolean,
  state = NOTHING as { undo: string | null; redo: string | null },
) => flat(menuPlan({ mac, packaged, appName: "Swingstill" }, state));

const commands = (items: readonly PlannedItem[]): PlannedCommand[] =>
  items.filter((item): item is PlannedCommand => typeof item === "object" && "command" in item);
const roles = (items: readonly PlannedItem[]): Role[] =>
  items.flatMap((item) => (typeof item === "object" && "role" in item ? [item.role] : []));

const SYSTEMS = [
  { system: "Mac", mac: true },
  { system: "elsewhere", mac: false },
];

describe.each(SYSTEMS)("$system", ({ mac }) => {
  test("no command twice, no key twice", () => {
    const found = commands(plan(mac, true));
    const keys = found.flatMap((item) => item.keys ?? []);
    expect(new Set(found.map((item) => item.command)).size).toBe(found.length);
    expect(new Set(keys).size).toBe(keys.length);
  });

  test("paper stands where one looks for printing, with its key; the archive beside it", () => {
    const file = menuPlan({ mac, packaged: true, appName: "Swingstill" }, NOTHING).find(
      ({ label }) => label === "File",
    );
    const found = commands(file?.items ?? []);
    expect(found.find((item) => item.keys === "CmdOrCtrl+P")?.command).toBe("paper");
    expect(found.map((item) => item.command)).toContain("export-sheet");
  });

  test("a person can leave", () => expect(roles(plan(mac, true))).toContain("quit"));

  test("no developer's entries in the packaged program", () => {
    expect(roles(plan(mac, true))).not.toContain("toggleDevTools");
    expect(roles(plan(mac, true))).not.toContain("reload");
    expect(roles(plan(mac, false))).toContain("toggleDevTools");
  });

  test("undo and redo name their step, and are off where there is none", () => {
    const find = (state: { undo: string | null; redo: string | null }, command: string) =>
      commands(plan(mac, true, state)).find((item) => item.command === command);
    expect(find(NOTHING, "undo")).toMatchObject({ label: "Undo", enabled: false });
    const state = { undo: "change gap & slot", redo: "add animal" };
    expect(find(state, "undo")).toMatchObject({ label: "Undo: change gap && slot", enabled: true });
    expect(find(state, "redo")).toMatchObject({ label: "Redo: add animal", enabled: true });
  });
});
