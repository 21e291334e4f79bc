// Says at the end which tests were skipped, and why. A skipped test carries its reason in its name.
import type { Reporter, TestModule, Vitest } from "vitest/node";

export default class SkippedReporter implements Reporter {
  #chosenByName = false;

  onInit(vitest: Vitest): void {
    this.#chosenByName = vitest.config.testNamePattern !== undefined;
  }

  onTestRunEnd(modules: readonly TestModule[]): void {
    // Run with -t, every other test counts as skipped: nothing to report.
    if (this.#chosenByName) return;
    const skipped = modules.flatMap((module) =>
      [...module.children.allTests("skipped")].map((test) => `${module.relativeModuleId}: ${test.fullName}`),
    );
    if (skipped.length === 0) return;
    process.stdout.write(
      `\nSkipped here (${skipped.length}):\n${skipped.map((name) => `  ${name}\n`).join("")}\n`,
    );
  }
}
