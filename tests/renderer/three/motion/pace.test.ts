import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { createPace, SETTLED } from "../../../../renderer/three/motion/pace.ts";

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

function canvas() {
  let density = 2;
  const drawn: number[] = [];
  return {
    drawn,
    density: () => density,
    setDensity: (to: number) => {
      density = to;
    },
    draw: () => {
      drawn.push(density);
    },
  };
}

test("draws coarsely while touched and finely once, a while after the last touch", () => {
  const seen = canvas();
  const pace = createPace({ fine: false, still: 2, moving: 0.75, film: 1 }, seen);
  pace.touch();
  vi.advanceTimersByTime(SETTLED - 1);
  pace.touch();
  vi.advanceTimersByTime(SETTLED - 1);
  expect(seen.drawn).toEqual([0.75, 0.75]);
  vi.advanceTimersByTime(1000);
  expect(seen.drawn).toEqual([0.75, 0.75, 2]);
});

test("a fast machine draws the same always, at once and once", () => {
  const seen = canvas();
  createPace({ fine: true, still: 2, moving: 2, film: 2 }, seen).touch();
  vi.advanceTimersByTime(1000);
  expect(seen.drawn).toEqual([2]);
});

test("stopped, it does not draw any more", () => {
  const seen = canvas();
  const pace = createPace({ fine: false, still: 2, moving: 0.75, film: 1 }, seen);
  pace.touch();
  pace.stop();
  vi.advanceTimersByTime(1000);
  expect(seen.drawn).toEqual([0.75]);
});
