import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { transform } from "esbuild";
import { expect, test } from "vitest";

test("the bridge is types alone: nothing of the shell ends up in the page", async () => {
  const source = readFileSync(resolve(import.meta.dirname, "../../electron/bridge.ts"), "utf8");
  const { code } = await transform(source, { loader: "ts" });
  expect(code.trim()).toBe("");
});
