import { describe, expect, test } from "vitest";
import {
  type CallName,
  checkCall,
  MAX_BYTES,
  MAX_NAME,
  MAX_TEXT,
  MAX_TRIAL,
  Refusal,
} from "../../electron/messages.ts";

const TOKEN = "0123456789abcdef0123456789abcdef";

/** One good example of each request. */
const GOOD: Readonly<Record<CallName, Readonly<Record<string, unknown>>>> = {
  "door.open": {},
  "door.save": { token: TOKEN, name: "a.door.json", text: "{}" },
  "door.saveAs": { name: "a.door.json", text: "{}" },
  "bytes.save": { name: "swing.csv", bytes: new Uint8Array([1, 2]), type: "text/csv" },
  "recent.list": {},
  "recent.open": { token: TOKEN },
  "page.ready": {},
  "menu.state": { undo: "change the gap", redo: null },
  "close.unsaved": { unsaved: true },
  "close.saved": { saved: false },
  "snapshot.write": { document: "door-1", name: "a.door.json", token: null, text: "{}" },
  "snapshot.read": {},
  "snapshot.clear": { document: "door-1" },
  "trial.read": { token: TOKEN, name: "a.door.json" },
  "trial.keep": { token: TOKEN, name: "a.door.json", text: "{}" },
};
const NAMES = Object.keys(GOOD) as CallName[];

const refused = (name: unknown, args: unknown): string => {
  try {
    checkCall(name, args);
  } catch (error) {
    if (error instanceof Refusal) return error.message;
    throw error;
  }
  throw new Error(`${String(name)} was let through`);
};

describe("what passes", () => {
  test.each(NAMES)("%s as it should be", (name) => {
    expect(checkCall(name, GOOD[name])).toEqual({ name, args: GOOD[name] });
  });

  test("a save to a place not chosen yet", () => {
    const args = { ...GOOD["door.save"], token: null };
    expect(checkCall("door.save", args).args).toEqual(args);
  });

  test("only the checked fields go on, in a fresh object", () => {
    const args = { unsaved: true };
    expect(checkCall("close.unsaved", args).args).not.toBe(args);
  });
});

describe("names that are refused", () => {
  test.each([undefined, null, 7, "", "door.delete", "__proto__", "constructor", "toString", ["door.open"]])(
    "%j",
    (name) => {
      expect(refused(name, {})).toBe("there is no such request");
    },
  );
});

describe("what is refused of every request", () => {
  test.each(NAMES)("%s: anything but an object", (name) => {
    for (const args of [undefined, null, 1, "x", [], [GOOD[name]]])
      expect(refused(name, args)).toContain("an object");
  });

  test.each(NAMES)("%s: an unknown field", (name) => {
    expect(refused(name, { ...GOOD[name], path: "/etc/passwd" })).toBe(
      `${name} has the unknown field "path"`,
    );
  });

  test.each(NAMES)("%s: __proto__ as a field", (name) => {
    expect(refused(name, JSON.parse('{"__proto__": {"a": 1}}'))).toContain('unknown field "__proto__"');
  });

  const single = NAMES.flatMap((name) => Object.keys(GOOD[name]).map((field) => ({ name, field })));

  test.each(single)("$name: without $field", ({ name, field }) => {
    const { [field]: _gone, ...rest } = GOOD[name];
    expect(refused(name, rest)).toContain(`${name}.${field} must be`);
  });

  test.each(single)("$name: $field of another kind", ({ name, field }) => {
    for (const value of [7, {}, [], undefined, Number.NaN])
      expect(refused(name, { ...GOOD[name], [field]: value })).toContain(`${name}.${field} must be`);
  });

  test.each(single)("$name: $field inherited, not its own", ({ name, field }) => {
    const { [field]: value, ...rest } = GOOD[name];
    const args = Object.assign(Object.create({ [field]: value }), rest);
    expect(refused(name, args)).toContain(`${name}.${field} must be`);
  });
});

describe("what is refused of a value", () => {
  test.each([
    "",
    "../../etc/passwd",
    "/etc/passwd",
    TOKEN.toUpperCase(),
    `${TOKEN}0`,
    `${TOKEN}\n`,
    TOKEN.slice(1),
  ])("token %j", (token) => {
    expect(refused("recent.open", { token })).toContain("a token given out before");
    expect(refused("door.save", { ...GOOD["door.save"], token })).toContain("a token given out before");
  });

  test.each(["", "Door", "a/b", "..", "a.b", "a b", "é", "a\n", "x".repeat(65)])(
    "document %j",
    (document) => {
      expect(refused("snapshot.clear", { document })).toContain("lower-case letters");
    },
  );

  test("text and names too long", () => {
    expect(refused("door.saveAs", { name: "a", text: "x".repeat(MAX_TEXT + 1) })).toContain(
      `at most ${MAX_TEXT}`,
    );
    expect(refused("door.saveAs", { name: "x".repeat(MAX_NAME + 1), text: "" })).toContain(
      `at most ${MAX_NAME}`,
    );
    expect(checkCall("door.saveAs", { name: "a", text: "x".repeat(MAX_TEXT) })).toBeDefined();
  });

  test("readings too long; none at all forgets them", () => {
    const { text: _text, ...rest } = GOOD["trial.keep"];
    expect(refused("trial.keep", { ...rest, text: "x".repeat(MAX_TRIAL + 1) })).toContain(
      `at most ${MAX_TRIAL}`,
    );
    expect(checkCall("trial.keep", { ...rest, text: null, token: null }).args).toMatchObject({
      text: null,
      token: null,
    });
  });

  test("bytes that are none, or too many", () => {
    const { bytes: _bytes, ...rest } = GOOD["bytes.save"];
    for (const bytes of ["abc", new ArrayBuffer(3), new Uint16Array(1), { length: 3 }])
      expect(refused("bytes.save", { ...rest, bytes })).toContain("bytes, at most");
    const huge = Object.create(Uint8Array.prototype, { byteLength: { value: MAX_BYTES + 1 } });
    expect(refused("bytes.save", { ...rest, bytes: huge })).toContain("bytes, at most");
  });

  test.each(["", "text/javascript", "application/x-sh", "TEXT/CSV", "toString", "__proto__"])(
    "type %j",
    (type) => {
      expect(refused("bytes.save", { ...GOOD["bytes.save"], type })).toContain("one of text/csv");
    },
  );

  test("a flag that is only truthy", () => {
    for (const unsaved of [1, 0, "true", null])
      expect(refused("close.unsaved", { unsaved })).toContain("true or false");
  });
});
