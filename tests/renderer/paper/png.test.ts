import { deflateSync } from "fflate";
import { expect, test } from "vitest";
import { withResolution } from "../../../renderer/paper/png.ts";

/** The smallest PNG: one white dot, written as the standard says, with the CRCs the standard's own table gives. */
function dot(): Uint8Array {
  const chunk = (name: string, data: Uint8Array): number[] => {
    const body = [...new TextEncoder().encode(name), ...data];
    return [...bytes(data.length), ...body, ...bytes(crc(Uint8Array.from(body)))];
  };
  const header = Uint8Array.from([...bytes(1), ...bytes(1), 8, 0, 0, 0, 0]);
  const zlib = deflateSync(Uint8Array.from([0, 255]));
  return Uint8Array.from([
    137,
    80,
    78,
    71,
    13,
    10,
    26,
    10,
    ...chunk("IHDR", header),
    ...chunk("IDAT", zlib),
    ...chunk("IEND", new Uint8Array()),
  ]);
}

const bytes = (n: number): number[] => [n >>> 24, (n >>> 16) & 255, (n >>> 8) & 255, n & 255];

/** By table (PNG, annex D), another way than the product's. */
const TABLE = Array.from({ length: 256 }, (_, n) => {
  let c = n;
  for (let k = 0; k < 8; k++) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1;
  return c >>> 0;
});
const crc = (data: Uint8Array): number =>
  (data.reduce((c, byte) => TABLE[(c ^ byte) & 255] ^ (c >>> 8), 0xffffffff) ^ 0xffffffff) >>> 0;

test("the CRC by table is that of the standard: an empty IEND chunk's is AE 42 60 82", () => {
  expect(crc(new TextEncoder().encode("IEND"))).toBe(0xae426082);
});

test("the chunk stands after the header, is whole, and leaves the rest as it was", () => {
  const png = dot();
  const made = withResolution(png, 300 / 25.4);
  expect([...made.subarray(0, 33)]).toEqual([...png.subarray(0, 33)]);
  expect([...made.subarray(33 + 21)]).toEqual([...png.subarray(33)]);
  const chunk = made.subarray(33, 33 + 21);
  expect([...chunk.subarray(0, 8)]).toEqual([0, 0, 0, 9, ...new TextEncoder().encode("pHYs")]);
  expect([...chunk.subarray(8, 17)]).toEqual([...bytes(11_811), ...bytes(11_811), 1]);
  expect([...chunk.subarray(17)]).toEqual(bytes(crc(chunk.subarray(4, 17))));
});
