import { defineConfig } from "vitest/config";

const root = new URL("..", import.meta.url).pathname;

export default defineConfig({
  root,
  test: {
    reporters: ["default", `${root}tests/tooling/skipped-reporter.ts`],
    // Node's own warnings about outdated calls are errors.
    execArgv: ["--throw-deprecation"],
    projects: [
      {
        extends: true,
        test: {
          name: "unit",
          include: ["tests/**/*.test.ts", "tests/**/*.test.tsx"],
          exclude: ["tests/e2e/**"],
          testTimeout: 60_000,
        },
      },
      {
        extends: true,
        test: {
          name: "e2e",
          include: ["tests/e2e/**/*.test.ts"],
          globalSetup: ["tests/e2e/harness/build.ts"],
          testTimeout: 120_000,
          hookTimeout: 120_000,
          // One browser at a time, after the unit tests: two at once starve each other on a small machine.
          fileParallelism: false,
          sequence: { groupOrder: 1 },
        },
      },
    ],
  },
});
