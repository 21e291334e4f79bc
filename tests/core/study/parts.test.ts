import { describe, expect, test } from "vitest";
import {
  type Channel,
  countOnWorkers,
  StudyStopped,
  type StudyWorker,
  serveStudy,
} from "../../../core/study/channel.ts";
import { doorAsJson, doorDigest, doorFromJson } from "../../../core/study/digest.ts";
import { holdStudy } from "../../../core/study/hold-study.ts";
import {
  joinParts,
  parsePart,
  partRange,
  readPart,
  type StudyPart,
  writePart,
} from "../../../core/study/part.ts";
import { countRange, SampleRun } from "../../../core/study/sample-run.ts";
import { runStudy } from "../../../core/study/study.ts";
import { referenceDoor } from "../doors.ts";
import { changed } from "./doors.ts";

const REQUEST = { door: referenceDoor("20-family"), samples: 90, seed: 8 };
const WHOLE = runStudy(REQUEST);

/** A worker on this thread: messages are cloned as between threads and answered later, the faster the higher `haste`. */
function workerHere(haste: number, log: string[] = []): StudyWorker {
  let toWorker: (message: unknown) => void = () => {};
  let fromWorker: (message: unknown) => void = () => {};
  let ended = false;
  const inner: Channel = {
    post: (message) => {
      const copy = structuredClone(message);
      setTimeout(() => ended || fromWorker(copy), 20 / haste);
    },
    receive: (handler) => {
      toWorker = handler;
    },
  };
  serveStudy(inner);
  return {
    post: (message) => {
      const copy = structuredClone(message);
      setTimeout(() => ended || toWorker(copy), 0);
    },
    receive: (handler) => {
      fromWorker = handler;
    },
    broken: () => {},
    end: () => {
      ended = true;
      log.push("ended");
    },
  };
}

function partFile(part: number, parts: number, request = REQUEST): string {
  const { from, to } = partRange(request.samples, part, parts);
  return writePart(request, countRange(new SampleRun(request), request, from, to));
}

function read(text: string): StudyPart {
  const result = readPart(text, "a.json");
  if (!result.ok) throw new Error(result.error.message);
  return result.part;
}

describe("on workers", () => {
  test.each([1, 3])("%d of them give the same answer to the last bit", async (count) => {
    const workers = Array.from({ length: count }, (_, i) => workerHere(1 + 3 * i));
    const progress: number[] = [];
    const total = await countOnWorkers(REQUEST, { from: 0, to: 90 }, workers, {
      onProgress: (done) => progress.push(done),
    });
    expect(holdStudy(REQUEST, total)).toEqual(WHOLE);
    expect(progress.at(-1)).toBe(90);
    expect([...progress].sort((a, b) => a - b)).toEqual(progress);
  });

  test("stops at once, and ends the workers", async () => {
    const log: string[] = [];
    const stop = new AbortController();
    const counting = countOnWorkers(REQUEST, { from: 0, to: 90 }, [workerHere(1, log), workerHere(1, log)], {
      onProgress: () => stop.abort(),
      signal: stop.signal,
    });
    await expect(counting).rejects.toBeInstanceOf(StudyStopped);
    expect(log).toEqual(["ended", "ended"]);
  });

  test("that break down are said", async () => {
    const worker = {
      ...workerHere(1),
      broken: (handler: (reason: string) => void) => handler("out of memory"),
    };
    await expect(countOnWorkers(REQUEST, { from: 0, to: 90 }, [worker])).rejects.toThrow("out of memory");
  });
});

describe("parts on several machines", () => {
  test("joined in any order are the whole to the last bit", () => {
    const files = [3, 1, 2].map((part) => partFile(part, 3));
    const joined = joinParts(files.map(read), ["c", "a", "b"]);
    if (!joined.ok) throw new Error(joined.error.message);
    expect(joined.study).toEqual(WHOLE);
  });

  test("cover all samples once", () => {
    for (const samples of [1, 7, 20_000]) {
      for (const parts of [1, 2, 7]) {
        let at = 0;
        for (let part = 1; part <= parts; part++) {
          const { from, to } = partRange(samples, part, parts);
          expect(from).toBe(at);
          at = to;
        }
        expect(at).toBe(samples);
      }
    }
  });

  test("are asked for as i/n", () => {
    expect(parsePart("2/4")).toEqual({ part: 2, parts: 4 });
    for (const wrong of ["0/4", "5/4", "2", "2/", "a/b", "-1/3", "1/2/3"])
      expect(parsePart(wrong)).toBeNull();
  });

  const refusal = (parts: readonly string[]) => {
    const joined = joinParts(parts.map(read), ["first", "second", "third"]);
    return joined.ok ? "joined" : joined.error.message;
  };

  test("do not join twice, nor with a gap", () => {
    const [one, two] = [1, 2].map((part) => partFile(part, 3));
    expect(refusal([one, one])).toMatch(/second.*another part/);
    expect(refusal([one, two])).toMatch(/a part is missing.*60 to 89/);
    expect(refusal([])).toMatch(/all parts/);
  });

  test("do not join with parts of another door, seed or count", () => {
    const one = partFile(1, 2);
    const door = changed(REQUEST.door, { "hinge.frictionTorque": 3e-3 });
    expect(refusal([one, partFile(2, 2, { ...REQUEST, door })])).toMatch(/second: it is of another door/);
    expect(refusal([one, partFile(2, 2, { ...REQUEST, seed: 9 })])).toMatch(/second.*seed 9.*seed 8/);
    expect(refusal([one, partFile(2, 2, { ...REQUEST, samples: 91 })])).toMatch(/91 samples/);
  });

  test("are refused where they are something else or were changed", () => {
    const text = partFile(1, 2);
    const message = (file: string) => {
      const result = readPart(file, "p.json");
      return result.ok ? "read" : result.error.message;
    };
    expect(message("{}")).toMatch(/p\.json.*a part of a study/);
    expect(message("no json")).toMatch(/a part of a study/);
    expect(message(text.replace('"version":2', '"version":9'))).toMatch(/version 9.*version 2/);
    expect(message(text.replace('"frictionTorque":0.0025', '"frictionTorque":0.0026'))).toMatch(
      /do not belong/,
    );
    expect(message(text.replace(/"grids":\[\[/, '"grids":7,"g":[['))).toMatch(/damaged|do not belong/);
    expect(message(text.replace('"samples":90', '"samples":3'))).toMatch(/do not belong/);
  });
});

describe("a door's fingerprint", () => {
  test("survives JSON, and minds every number but no name", () => {
    const { door } = REQUEST;
    const back = doorFromJson(JSON.parse(JSON.stringify(doorAsJson(door))));
    expect(back).toEqual(door);
    expect(doorDigest(back)).toBe(doorDigest(door));
    expect(doorDigest({ ...door, name: "Other", notes: "x" })).toBe(doorDigest(door));
    expect(doorDigest(changed(door, { "latch.offset": 1e-9 }))).not.toBe(doorDigest(door));
  });
});
