import { expect, test } from "vitest";
import { holdWords } from "../../../renderer/shell/hold-words.ts";

test("a hold, or why there is none: too few samples are no verdict on the door", () => {
  const study = { samplesNeeded: 2995, reliability: 0.999 };
  const answer = (recommended: number | null, samples: number, atLongest: number) =>
    holdWords(
      {
        recommended,
        samples,
        curve: [
          [0, 0, 0],
          [20, atLongest, 0.99],
        ],
      },
      study,
    );
  expect(answer(12.345, 20_000, 1)).toBe("12.35 s");
  expect(answer(null, 2500, 1)).toBe("too few tried");
  expect(answer(null, 3000, 0.9995)).toBe("not shown yet");
  expect(answer(null, 3000, 0.71)).toBe("none will do");
});
