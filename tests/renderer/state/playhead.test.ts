import { describe, expect, test, vi } from "vitest";
import { drivePlayhead } from "../../../renderer/state/drive.ts";
import { createPlayhead } from "../../../renderer/state/playhead.ts";

function ready() {
  const playhead = createPlayhead();
  playhead.setRange(0, 10);
  return playhead;
}

test("time passes only while it plays, at its rate", () => {
  const playhead = ready();
  playhead.advance(1);
  expect(playhead.time).toBe(0);
  playhead.play();
  playhead.advance(1);
  playhead.setRate(1 / 20);
  playhead.advance(1);
  expect(playhead.time).toBeCloseTo(1.05, 12);
});

describe("the end of the stretch", () => {
  test("loops", () => {
    const playhead = ready();
    playhead.play();
    playhead.advance(12);
    expect(playhead.time).toBe(10);
    playhead.advance(0.1);
    expect(playhead.time).toBe(0);
    expect(playhead.settings.playing).toBe(true);
  });
  test("or stops, and play starts over", () => {
    const playhead = ready();
    playhead.setLoop(false);
    playhead.play();
    playhead.advance(12);
    playhead.advance(0.1);
    expect(playhead.settings.playing).toBe(false);
    expect(playhead.time).toBe(10);
    playhead.play();
    expect(playhead.time).toBe(0);
  });
});

test("a step is a frame at the present rate and pauses", () => {
  const playhead = ready();
  playhead.play();
  playhead.seek(5);
  playhead.step(-3);
  expect(playhead.settings.playing).toBe(false);
  expect(playhead.time).toBeCloseTo(5 - 3 / 60, 12);
});

test("a shorter film keeps the moment within it", () => {
  const playhead = ready();
  playhead.seek(8);
  playhead.setRange(0, 5);
  expect(playhead.time).toBe(5);
});

test("ticks tell of the moment, settings only of settings, and unsubscribing ends it", () => {
  const playhead = ready();
  const tick = vi.fn();
  const changed = vi.fn();
  const end = playhead.subscribe(tick);
  playhead.subscribeSettings(changed);
  playhead.play();
  playhead.advance(0.1);
  playhead.advance(0.1);
  expect(changed).toHaveBeenCalledTimes(1);
  expect(tick).toHaveBeenCalledTimes(3);
  end();
  playhead.seek(1);
  expect(tick).toHaveBeenCalledTimes(3);
});

describe("the driver", () => {
  function clockwork() {
    const waiting = new Map<number, (now: number) => void>();
    let count = 0;
    return {
      waiting,
      requestAnimationFrame(callback: (now: number) => void) {
        waiting.set(++count, callback);
        return count;
      },
      cancelAnimationFrame: (handle: number) => void waiting.delete(handle),
      frame(now: number) {
        const callbacks = [...waiting.values()];
        waiting.clear();
        for (const callback of callbacks) callback(now);
      },
    };
  }

  test("asks for frames only while it plays", () => {
    const playhead = ready();
    const clock = clockwork();
    drivePlayhead(playhead, clock);
    expect(clock.waiting.size).toBe(0);
    playhead.play();
    clock.frame(1000);
    clock.frame(1016);
    expect(playhead.time).toBeCloseTo(0.016, 9);
    playhead.pause();
    clock.frame(1032);
    expect(clock.waiting.size).toBe(0);
    playhead.play();
    clock.frame(9000);
    clock.frame(9016);
    expect(playhead.time).toBeCloseTo(0.032, 9);
  });

  test("does not leap after the page was hidden", () => {
    const playhead = ready();
    const clock = clockwork();
    drivePlayhead(playhead, clock);
    playhead.play();
    clock.frame(0);
    clock.frame(60_000);
    expect(playhead.time).toBeCloseTo(0.1, 9);
  });
});
