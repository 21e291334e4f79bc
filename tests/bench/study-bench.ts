/** The tolerance study of the medium-dog example against the same count of bare swings, and two workers against one. */
import { existsSync } from "node:fs";
import { dirname, join } from "node:path";
import { pathToFileURL } from "node:url";
import { Worker } from "node:worker_threads";
import { startStudyWorker } from "../../core/cli/study-worker.ts";
import { countOnWorkers } from "../../core/study/channel.ts";
import { SampleRun } from "../../core/study/sample-run.ts";
import { sampleStream } from "../../core/study/stream.ts";
import { emptyTally } from "../../core/study/tally.ts";
import { Motion } from "../../core/swing/motion.ts";
import { SwingRun } from "../../core/swing/swing.ts";
import { shaped } from "../../core/swing/system.ts";
import { Trace } from "../../core/swing/trace.ts";
import { peerStudy } from "./peer-study.ts";
import { mediumDog } from "./swing-bench.ts";
import { report } from "./timing.ts";

/** Samples per round: the ratio of one sample to one bare swing does not change with the count. */
const SAMPLES = 400;
const ROUNDS = 15;
const WORKER_SAMPLES = 20_000;
const WORKER_ROUNDS = 3;
/** About as long as the study takes. */
const ARITHMETIC_STEPS = 5e7;
const ARITHMETIC = `
  const steps = require("node:worker_threads").workerData;
  (() => { let x = 0.5; for (let i = 0; i < steps; i++) x = Math.sqrt(x + 1) * Math.sin(x); return x; })();
`;

interface Prepared {
  readonly system: SampleRun["sampled"]["system"];
  readonly angle: number;
  readonly speed: number;
}

/** The study's own samples with everything drawn, assembled and tabulated beforehand. */
function prepare(run: SampleRun, seed: number, count: number): Prepared[] {
  return Array.from({ length: count }, (_, index) => {
    run.sampled.draw(sampleStream(seed, index));
    const { system, angle, speed } = run.sampled;
    const { magnets } = system;
    const kept = magnets && { ...magnets, torque: magnets.torque.slice(), energy: magnets.energy.slice() };
    return { system: shaped({ ...system, magnets: kept }), angle, speed };
  });
}

function seconds(work: () => void): number {
  const start = performance.now();
  work();
  return (performance.now() - start) / 1000;
}

function best(works: readonly (() => void)[], rounds: number): number[] {
  const least = works.map((work) => {
    work();
    return Number.POSITIVE_INFINITY;
  });
  for (let round = 0; round < rounds; round++) {
    works.forEach((work, i) => {
      least[i] = Math.min(least[i], seconds(work));
    });
  }
  return least;
}

/** Where the built worker lies. */
function workerFile(): URL {
  return pathToFileURL(join(dirname(process.argv[1]), "../cli/worker.mjs"));
}

/** Time of the whole study on new workers, and of its last three quarters alone, when their code is compiled, s. */
async function onWorkers(count: number): Promise<Rounds> {
  const request = { door: mediumDog(), samples: WORKER_SAMPLES, seed: 1 };
  const start = performance.now();
  let warm = start;
  const workers = Array.from({ length: count }, () => startStudyWorker(workerFile()));
  const onProgress = (done: number) => {
    if (done <= WORKER_SAMPLES / 4) warm = performance.now();
  };
  await countOnWorkers(request, { from: 0, to: WORKER_SAMPLES }, workers, { onProgress });
  const end = performance.now();
  return { whole: (end - start) / 1000, warm: (end - warm) / 1000 };
}

interface Rounds {
  readonly whole: number;
  readonly warm: number;
}

/** The same for plain arithmetic, split evenly: as much as two workers can gain on this machine at all. */
async function arithmetic(count: number): Promise<Rounds> {
  const start = performance.now();
  const ends = Array.from({ length: count }, () => {
    const worker = new Worker(ARITHMETIC, { eval: true, workerData: ARITHMETIC_STEPS / count });
    return new Promise((resolve) => worker.on("exit", resolve));
  });
  await Promise.all(ends);
  const whole = (performance.now() - start) / 1000;
  return { whole, warm: whole };
}

/** How many times as fast two are as one: the best of rounds taken in turns. */
async function gain(work: (workers: number) => Promise<Rounds>): Promise<Rounds> {
  const least = [1, 2].map(() => ({ whole: Number.POSITIVE_INFINITY, warm: Number.POSITIVE_INFINITY }));
  for (let round = 0; round < WORKER_ROUNDS; round++) {
    for (const count of [1, 2]) {
      const { whole, warm } = await work(count);
      const best = least[count - 1];
      best.whole = Math.min(best.whole, whole);
      best.warm = Math.min(best.warm, warm);
    }
  }
  const [one, two] = least;
  return { whole: one.whole / two.whole, warm: one.warm / two.warm };
}

export async function studyBench(): Promise<void> {
  const request = { door: mediumDog(), samples: SAMPLES, seed: 1 };
  const run = new SampleRun(request);
  const animals = request.door.animals.length;
  const prepared = prepare(run, request.seed, SAMPLES);
  const swings = new SwingRun(new Motion(), new Trace());
  const study = () => {
    const tally = emptyTally(0, SAMPLES, animals);
    for (let index = 0; index < SAMPLES; index++) run.add(index, tally);
  };
  const bare = () => {
    for (const { system, angle, speed } of prepared) swings.run(system, angle, speed);
  };
  const [ofStudy, ofBare] = best([study, bare], ROUNDS);
  console.log(
    `one sample of the study: ${(ofStudy / ofBare).toPrecision(3)} × the time of its bare swing (magnets rebuilt, outcome at every hold)`,
  );
  const { own, peer, note } = peerStudy(run, request.seed, animals);
  report("the study", "the same study on odex", own, peer, note);
  if (!existsSync(workerFile())) {
    console.log(
      "two workers against one: not measured, the command line is not built (npm run -s swingstill)",
    );
    return;
  }
  const [ofWorkers, ofArithmetic] = [await gain(onWorkers), await gain(arithmetic)];
  console.log(
    `two workers: ${ofWorkers.whole.toPrecision(3)} × as fast as one (${WORKER_SAMPLES} samples, workers started anew), ${ofWorkers.warm.toPrecision(3)} × once their code is compiled; plain arithmetic on two: ${ofArithmetic.whole.toPrecision(3)} ×`,
  );
}
