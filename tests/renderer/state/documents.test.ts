import { beforeEach, describe, expect, test, vi } from "vitest";
import type { Bridge, FileToken, FoundSnapshot, RecoverySnapshot } from "../../../electron/bridge.ts";
import { createDocuments, type UnsavedAnswer } from "../../../renderer/state/documents.ts";
import { changeEntries } from "../../../renderer/state/entries.ts";
import { createPage, isUnsaved, textOf } from "../../../renderer/state/page-store.ts";
import { exampleText } from "../example.ts";

const TOKEN = "0".repeat(32) as FileToken;

/** A disk of one file, and what the shell was asked. */
function setUp() {
  const page = createPage({ ask: () => {}, onAnswer: () => () => {} });
  const disk = { name: "disk.door.json", text: exampleText("cat") };
  const snapshots = new Map<string, RecoverySnapshot>();
  const bridge = {
    openDoor: vi.fn(async () => ({ token: TOKEN, ...disk })),
    saveDoor: vi.fn(async (token: FileToken | null, name: string, text: string) => {
      disk.text = text;
      return { token: token ?? TOKEN, name };
    }),
    saveDoorAs: vi.fn(
      async (name: string, text: string): Promise<{ token: FileToken; name: string } | null> => {
        disk.text = text;
        return { token: TOKEN, name };
      },
    ),
    writeSnapshot: vi.fn(
      async (snapshot: RecoverySnapshot) => void snapshots.set(snapshot.document, snapshot),
    ),
    readSnapshots: async (): Promise<FoundSnapshot[]> =>
      [...snapshots.values()].map((s) => ({ ...s, savedAt: 1 })),
    clearSnapshot: vi.fn(async (document: string) => void snapshots.delete(document)),
  };
  const asked: string[] = [];
  const told: string[] = [];
  let answer: UnsavedAnswer = "stay";
  const documents = createDocuments(page, bridge as unknown as Bridge, {
    unsaved: async (name) => {
      asked.push(name);
      return answer;
    },
    tell: (title, reasons) => told.push([title, ...reasons].join(" | ")),
  });
  const change = (hold: string) =>
    page.actions.change((f) => changeEntries("Hold", f, [{ path: "timer.holdTime", entry: hold }]));
  return {
    page,
    disk,
    bridge,
    documents,
    asked,
    told,
    snapshots,
    change,
    answerWith: (to: UnsavedAnswer) => {
      answer = to;
    },
    text: () => textOf(page.store.getState()),
    unsaved: () => isUnsaved(page.store.getState()),
  };
}

test("open, save: the file is what it was, byte for byte", async () => {
  const { documents, disk, text } = setUp();
  const before = disk.text;
  await documents.open();
  expect(text()).toBe(before);
  await documents.save();
  expect(disk.text).toBe(before);
});

test("a door from an example has no file yet: saving asks for a place", async () => {
  const { documents, bridge, change, unsaved } = setUp();
  await documents.startFrom("cat", exampleText("cat"));
  change("11 s");
  expect(await documents.save()).toBe(true);
  expect(bridge.saveDoor).toHaveBeenCalledWith(null, "cat.door.json", expect.stringContaining('"11 s"'));
  expect(unsaved()).toBe(false);
});

describe("unsaved work in the way of another door", () => {
  test("unchanged, nothing is asked", async () => {
    const { documents, asked } = setUp();
    await documents.open();
    await documents.open();
    expect(asked).toEqual([]);
  });
  test.each([
    ["stay", '"11 s"', 0],
    ["discard", null, 0],
    ["save", null, 1],
  ] as const)("%s", async (answer, kept, saves) => {
    const { documents, asked, change, answerWith, text, bridge } = setUp();
    await documents.open();
    change("11 s");
    answerWith(answer);
    await documents.startFrom("medium-dog", exampleText("medium-dog"));
    expect(asked).toEqual(["disk.door.json"]);
    expect(bridge.saveDoor).toHaveBeenCalledTimes(saves);
    if (kept === null) expect(text()).toBe(exampleText("medium-dog"));
    else expect(text()).toContain(kept);
  });
  test("a save that is cancelled keeps the door at hand", async () => {
    const { documents, change, answerWith, text, bridge } = setUp();
    await documents.open();
    change("11 s");
    answerWith("save");
    bridge.saveDoor.mockResolvedValueOnce(null as never);
    await documents.startFrom("medium-dog", exampleText("medium-dog"));
    expect(text()).toContain('"11 s"');
  });
});

test("a save that fails is told, and the work stays unsaved", async () => {
  const { documents, change, bridge, told, unsaved } = setUp();
  await documents.open();
  change("11 s");
  bridge.saveDoor.mockRejectedValueOnce(new Error("the disk is full"));
  expect(await documents.save()).toBe(false);
  expect(told.join()).toContain("the disk is full");
  expect(unsaved()).toBe(true);
});

test("a file that is no door is refused with its reason and the door at hand stays", async () => {
  const { documents, text, told } = setUp();
  await documents.open();
  const before = text();
  await documents.openFile({ name: "list.json", token: null, text: "[]" });
  expect(text()).toBe(before);
  expect(told.join()).toContain("list.json");
});

describe("recovery copies", () => {
  beforeEach(() => {
    vi.useFakeTimers();
    return () => vi.useRealTimers();
  });

  test("are kept of unsaved work, the last state of it, and cleared when it is saved", async () => {
    const { documents, change, snapshots } = setUp();
    await documents.open();
    documents.keepCopies(400);
    change("11 s");
    change("12.5 s");
    await vi.advanceTimersByTimeAsync(500);
    expect([...snapshots.values()].map(({ text }) => JSON.parse(text).timer.holdTime)).toEqual(["12.5 s"]);
    await documents.save();
    await vi.advanceTimersByTimeAsync(500);
    expect(snapshots.size).toBe(0);
  });

  test("bring the work back as unsaved, under its own name and file", async () => {
    const first = setUp();
    await first.documents.open();
    first.documents.keepCopies(400);
    first.change("11 s");
    await vi.advanceTimersByTimeAsync(500);
    const [found] = await first.documents.leftovers();

    const second = setUp();
    await second.documents.recover(found);
    expect(second.text()).toBe(first.text());
    expect(second.unsaved()).toBe(true);
    expect(second.page.store.getState().document).toMatchObject({ name: "disk.door.json", token: TOKEN });
  });

  test("one that could not be kept is tried again", async () => {
    const { documents, change, bridge, snapshots } = setUp();
    await documents.open();
    documents.keepCopies(400);
    bridge.writeSnapshot.mockRejectedValueOnce(new Error("full"));
    change("11 s");
    await vi.advanceTimersByTimeAsync(500);
    change("12.5 s");
    await vi.advanceTimersByTimeAsync(500);
    expect(snapshots.size).toBe(1);
  });
});
