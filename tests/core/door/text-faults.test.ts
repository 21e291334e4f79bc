/** Faults of a file's text that do not hide the faults of its entries. */
import { describe, expect, it } from "vitest";
import { readDoor } from "../../../core/door/read-door.ts";
import { textWith } from "./sample.ts";

describe("faults of the text itself that hide no others", () => {
  const whole = textWith(["hinge.stopRestitution", 0.5]);

  it.each(["NaN", "-Infinity", "1e999"])("%s in a number's place is told at its path", (number) => {
    const read = readDoor(whole.replace(/"stopRestitution":\s*0.5/, `"stopRestitution":${number}`));
    const given = number === "1e999" ? "Infinity" : number;
    expect(read).toMatchObject({
      ok: false,
      errors: [{ path: "hinge.stopRestitution", given }],
    });
  });

  it("a key given twice does not hide a wrong entry", () => {
    const read = readDoor(
      whole.replace(/"stopRestitution":\s*0.5/, '"stopRestitution":2,"stopRestitution":2'),
    );
    if (read.ok) throw new Error("refused");
    expect(read.errors.map(({ path }) => path)).toEqual(["hinge.stopRestitution", "hinge.stopRestitution"]);
  });
});
