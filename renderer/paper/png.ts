/** Pictures that know their size: a PNG's pixels to the metre (W3C, Portable Network Graphics, 11.3.4.3 pHYs). */

/** Bytes before the first chunk that may follow the header: signature 8, IHDR 25 (5.2, 11.2.1). */
const AFTER_HEADER = 33;

/** A PNG with its resolution written in; the picture must not have one yet. `perMm`: pixels to the millimetre. */
export function withResolution(png: Uint8Array, perMm: number): Uint8Array {
  const chunk = new Uint8Array(21);
  const view = new DataView(chunk.buffer);
  view.setUint32(0, 9);
  chunk.set([0x70, 0x48, 0x59, 0x73], 4);
  const perMetre = Math.round(perMm * 1000);
  view.setUint32(8, perMetre);
  view.setUint32(12, perMetre);
  // The unit is the metre.
  chunk[16] = 1;
  view.setUint32(17, crc32(chunk.subarray(4, 17)));
  const whole = new Uint8Array(png.length + chunk.length);
  whole.set(png.subarray(0, AFTER_HEADER));
  whole.set(chunk, AFTER_HEADER);
  whole.set(png.subarray(AFTER_HEADER), AFTER_HEADER + chunk.length);
  return whole;
}

/** The CRC of ISO 3309 that PNG uses (annex D, sample code's polynomial). */
function crc32(bytes: Uint8Array): number {
  let crc = 0xffffffff;
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit++) crc = (crc >>> 1) ^ (crc & 1 ? 0xedb88320 : 0);
  }
  return (crc ^ 0xffffffff) >>> 0;
}
