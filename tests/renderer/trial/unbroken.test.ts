import { expect, test } from "vitest";
import { unbroken } from "../../../renderer/trial/unbroken.ts";

test("figures stay with their units, and with nothing else", () => {
  expect(unbroken("45 °C; 13 V to 14.6 V; 9 doors in ten; 10 of 10; 4 in")).toBe(
    "45\u00a0°C; 13\u00a0V to 14.6\u00a0V; 9 doors in ten; 10 of 10; 4\u00a0in",
  );
});
