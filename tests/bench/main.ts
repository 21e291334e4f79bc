/** `npm run bench`: speeds as ratios to a peer in the same run. Nothing here passes or fails. */
import { magnetBench } from "./magnet-bench.ts";
import { studyBench } from "./study-bench.ts";
import { swingBench } from "./swing-bench.ts";

const BENCHES: Readonly<Record<string, () => void | Promise<void>>> = {
  swing: swingBench,
  magnets: magnetBench,
  study: studyBench,
};

const asked = process.argv.slice(2);
for (const [name, bench] of Object.entries(BENCHES)) {
  if (asked.length > 0 && !asked.includes(name)) continue;
  console.log(`\n${name}`);
  await bench();
}
