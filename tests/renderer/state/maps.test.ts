/** The page's map: how points come together from several threads, and what ends it. */
import { describe, expect, test } from "vitest";
import { readDoor } from "../../../core/door/index.ts";
import { studyView } from "../../../core/review/study-view.ts";
import { words } from "../../../core/review/words.ts";
import { doorMap } from "../../../core/study/map.ts";
import { parseAxis } from "../../../core/study/map-axis.ts";
import type { Engine } from "../../../renderer/state/engine.ts";
import { changeEntries } from "../../../renderer/state/entries.ts";
import { createMaps, isMapOf, type MapPort } from "../../../renderer/state/maps.ts";
import { createPage } from "../../../renderer/state/page-store.ts";
import type { MapOrder } from "../../../renderer/worker/map-messages.ts";
import { exampleText } from "../example.ts";

/** Answers nothing: the map only needs the file. */
const STILL: Engine = { ask: () => {}, onAnswer: () => () => {} };

const X = "magnets.gap=4 mm..8 mm:5";
const Y = "hinge.frictionTorque=4 mN m..8 mN m:5";
const WISH = { x: X, y: Y, of: "flap.mass", heavy: true };

function mapOf({ text, x, y, of }: MapOrder) {
  const read = readDoor(text);
  if (!read.ok) throw new Error("the door does not read");
  const [ax, ay] = [x, y ?? ""].map((axis) => parseAxis(axis, read.door));
  if (!ax.ok || !ay.ok) throw new Error("no axes");
  const made = doorMap(read.file, read.door, { x: ax.axis, y: ay.axis, of }, studyView(words("metric")));
  if (!made.ok) throw new Error("no map");
  return made.map;
}

/** A thread whose points are told one by one, when told to. */
class HandPort implements MapPort {
  order: MapOrder | null = null;
  ended = false;
  onmessage: MapPort["onmessage"] = null;
  onerror: MapPort["onerror"] = null;
  private place = -1;
  postMessage(order: MapOrder): void {
    this.order = order;
  }
  terminate(): void {
    this.ended = true;
  }
  step(): boolean {
    if (this.order === null || this.ended) return false;
    const map = mapOf(this.order);
    const { first, of } = this.order.share;
    if (this.place < 0) {
      this.place = first;
      const { request, subject } = map;
      this.onmessage?.({ data: { kind: "begun", request, subject } });
    } else if (this.place < map.order.length) {
      const { x, y, value } = map.point(this.place);
      this.place += of;
      this.onmessage?.({ data: { kind: "points", points: [[y * map.request.x.count + x, value]] } });
    } else this.onmessage?.({ data: { kind: "done" } });
    return true;
  }
}

function setUp(threads: number) {
  const page = createPage(STILL);
  const read = readDoor(exampleText("medium-dog"));
  if (!read.ok) throw new Error("the example does not read");
  page.actions.show({ id: "1", file: read.file, name: "door", token: null, saved: null });
  const ports: HandPort[] = [];
  const start = () => {
    const port = new HandPort();
    ports.push(port);
    return port;
  };
  const maps = createMaps(page, start, threads);
  const change = (path: string, entry: string) =>
    page.actions.change((file) => changeEntries("change", file, [{ path, entry }]));
  const values = () => maps.store.getState().map?.values;
  return { page, ports, maps, change, values };
}

const finish = (ports: readonly HandPort[]): void => {
  while (ports.some((port) => port.step()));
};

describe("threads", () => {
  test.each([1, 2, 3])("%s of them make the map of one, and end", (threads) => {
    const { maps, ports, values } = setUp(threads);
    maps.draw(WISH);
    expect(ports.length).toBe(threads);
    const map = mapOf(ports[0].order as MapOrder);
    for (let i = 0; i < 3; i++) for (const port of [...ports].reverse()) port.step();
    expect(values()?.filter((value) => value !== undefined).length).toBe(2 * threads);
    // Threads go on at their own pace.
    for (const port of ports) finish([port]);
    const expected = new Array(25);
    for (const { x, y, value } of map.points()) expected[y * 5 + x] = value;
    expect(values()).toEqual(expected);
    expect([maps.store.getState().running, ports.every(({ ended }) => ended)]).toEqual([false, true]);
  });

  test("a map whose points are quick has one", () => {
    const { maps, ports } = setUp(4);
    maps.draw({ ...WISH, heavy: false });
    expect(ports.map(({ order }) => order?.share)).toEqual([{ first: 0, of: 1 }]);
  });

  test("one that breaks, or refuses, ends all with its reason", () => {
    const { maps, ports } = setUp(2);
    maps.draw(WISH);
    ports[1].onerror?.({ message: "out of memory" });
    expect(maps.store.getState()).toMatchObject({ running: false, reasons: ["out of memory"] });
    expect(ports.every(({ ended, onmessage }) => ended && onmessage === null)).toBe(true);
    maps.draw(WISH);
    expect(maps.store.getState()).toMatchObject({ running: true, reasons: [] });
    ports[2].onmessage?.({ data: { kind: "refused", reasons: ["no such key"] } });
    expect(maps.store.getState()).toMatchObject({ running: false, reasons: ["no such key"] });
  });
});

describe("cut short", () => {
  test("Cancel keeps what is there and hears no more", () => {
    const { maps, ports, values } = setUp(2);
    maps.draw(WISH);
    for (let i = 0; i < 4; i++) for (const port of ports) port.step();
    maps.cancel();
    finish(ports);
    expect(values()?.filter((value) => value !== undefined).length).toBe(6);
    expect(maps.store.getState()).toMatchObject({ running: false, reasons: [] });
  });

  test("another map takes its place", () => {
    const { maps, ports } = setUp(1);
    maps.draw(WISH);
    ports[0].step();
    maps.draw({ ...WISH, of: "flap.inertia" });
    expect([ports[0].ended, maps.store.getState().map]).toEqual([true, null]);
    finish(ports);
    expect(maps.store.getState().map?.subject.name).toBe("flap.inertia");
  });

  test.each([0, 1])("a change of the door ends it, after %s steps", (steps) => {
    const { maps, ports, change } = setUp(2);
    maps.draw(WISH);
    for (let i = 0; i < steps; i++) for (const port of ports) port.step();
    change("flap.width", "30 cm");
    expect(maps.store.getState().running).toBe(false);
    expect(maps.store.getState().reasons).toEqual(["The door was changed, so the map was stopped."]);
  });

  test("a place adopted from it does not: it is the same map", () => {
    const { maps, ports, change, page } = setUp(2);
    maps.draw(WISH);
    for (let i = 0; i < 3; i++) for (const port of ports) port.step();
    change("magnets.gap", "5 mm");
    expect(maps.store.getState().running).toBe(true);
    page.actions.undo();
    expect(maps.store.getState().running).toBe(true);
    finish(ports);
    expect(maps.store.getState().map?.values).not.toContain(undefined);
  });
});

test("a map is of every door that differs only in what it runs over", () => {
  const { maps, ports, change, page } = setUp(1);
  maps.draw(WISH);
  finish(ports);
  const { map } = maps.store.getState();
  const stillOf = () => {
    const { document } = page.store.getState();
    return map !== null && document !== null && isMapOf(map, document.file);
  };
  expect(stillOf()).toBe(true);
  change("magnets.gap", "5 mm");
  change("hinge.frictionTorque", "0.006 N m");
  expect(stillOf()).toBe(true);
  change("flap.thickness", "7.5 mm");
  expect(stillOf()).toBe(false);
  page.actions.undo();
  expect(stillOf()).toBe(true);
});
