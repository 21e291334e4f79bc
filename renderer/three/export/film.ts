/** A film of the canvas, recorded in real time. */
import type { FilmRange } from "../scene-props.ts";

const TYPES = ["video/webm;codecs=vp9", "video/webm;codecs=vp8", "video/webm"];
const FRAMES_PER_SECOND = 30;
const BITS_PER_SECOND = 8_000_000;

/** The best WebM that this browser records, or `null`. */
export function webmType(isSupported: ((type: string) => boolean) | null): string | null {
  return isSupported === null ? null : (TYPES.find(isSupported) ?? null);
}

/** Films `range` by drawing each moment as its time comes. Rejects with words for people; `AbortError` when given up. */
export async function recordCanvas(
  canvas: HTMLCanvasElement,
  drawAt: (time: number) => void,
  range: FilmRange,
  signal?: AbortSignal,
): Promise<Blob> {
  const { from, to, rate } = range;
  if (!(to > from && rate > 0)) {
    throw new RangeError(
      `A film needs an end after its start and a rate above 0; received ${from} to ${to} at ${rate}.`,
    );
  }
  const Recorder = typeof MediaRecorder === "undefined" ? null : MediaRecorder;
  const type = webmType(Recorder === null ? null : (name) => Recorder.isTypeSupported(name));
  if (Recorder === null || type === null || typeof canvas.captureStream !== "function") {
    throw new Error("This browser cannot record WebM video. A picture can still be saved.");
  }
  signal?.throwIfAborted();
  drawAt(from);
  const stream = canvas.captureStream(FRAMES_PER_SECOND);
  const recorder = new Recorder(stream, { mimeType: type, videoBitsPerSecond: BITS_PER_SECOND });
  const chunks: Blob[] = [];
  recorder.ondataavailable = ({ data }) => {
    if (data.size > 0) chunks.push(data);
  };
  const stopped = new Promise<void>((resolve, reject) => {
    recorder.onstop = () => resolve();
    recorder.onerror = () => reject(new Error("The recording was broken off by the browser."));
  });
  recorder.start();
  try {
    await playThrough(drawAt, range, signal);
  } finally {
    if (recorder.state !== "inactive") recorder.stop();
    for (const track of stream.getTracks()) track.stop();
  }
  await stopped;
  return new Blob(chunks, { type: "video/webm" });
}

/** Draws frame after frame until the range's end has been shown. */
function playThrough(drawAt: (time: number) => void, range: FilmRange, signal?: AbortSignal): Promise<void> {
  return new Promise((resolve, reject) => {
    let start = Number.NaN;
    const frame = (now: number) => {
      if (signal?.aborted) return reject(signal.reason);
      if (Number.isNaN(start)) start = now;
      const time = range.from + ((now - start) / 1000) * range.rate;
      drawAt(Math.min(time, range.to));
      if (time >= range.to) resolve();
      else requestAnimationFrame(frame);
    };
    requestAnimationFrame(frame);
  });
}
