import { expect, test } from "vitest";
import { labelOf, typeOf } from "../../../renderer/paper/files.ts";

test.each([
  ["build-sheet.pdf", "PDF", "application/pdf"],
  ["template-flap.dxf", "Flap DXF", "image/vnd.dxf"],
  ["wiring.svg", "SVG", "image/svg+xml"],
  ["circuit.cir", "Netlist", "text/x-netlist"],
  ["hold-timer.c", "C", "text/x-c"],
  ["bench-card.html", "HTML", "text/html"],
  ["wiring.png", "PNG", "image/png"],
])("%s", (name, label, type) => {
  expect([labelOf(name), typeOf(name)]).toEqual([label, type]);
});

test("an ending nobody knows is no file of the set", () => {
  expect(() => typeOf("set.exe")).toThrow("no kind of file ends as set.exe");
});
