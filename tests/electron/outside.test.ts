import { expect, test } from "vitest";
import type { FileToken, OpenedDoor } from "../../electron/bridge.ts";
import { createOutsideDoors } from "../../electron/outside.ts";

function setUp() {
  const delivered: string[] = [];
  const complaints: string[] = [];
  const read = async (path: string): Promise<OpenedDoor> => {
    if (path.includes("gone")) throw new Error(`${path} is gone`);
    return { token: path as FileToken, name: path, text: "{}" };
  };
  const outside = createOutsideDoors(
    read,
    (door) => delivered.push(door.name),
    (message) => complaints.push(message),
  );
  return { outside, delivered, complaints };
}

const settled = (): Promise<void> => new Promise((done) => setImmediate(done));

test("a door opened before the page listens waits for it", async () => {
  const { outside, delivered } = setUp();
  outside.open("a");
  outside.open("b");
  await settled();
  expect(delivered).toEqual([]);
  outside.pageReady();
  await settled();
  expect(delivered).toEqual(["a", "b"]);
  outside.pageReady();
  await settled();
  expect(delivered).toEqual(["a", "b"]);
});

test("later ones go straight to the page, until it loads anew", async () => {
  const { outside, delivered } = setUp();
  outside.pageReady();
  outside.open("a");
  await settled();
  outside.pageGone();
  outside.open("b");
  await settled();
  expect(delivered).toEqual(["a"]);
});

test("what cannot be read is told to the person", async () => {
  const { outside, delivered, complaints } = setUp();
  outside.pageReady();
  outside.open("gone");
  await settled();
  expect(delivered).toEqual([]);
  expect(complaints).toEqual(["gone is gone"]);
});
