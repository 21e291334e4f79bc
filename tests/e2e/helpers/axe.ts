// What axe has to object to on a page, one line each.
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Page } from "playwright-core";

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

interface Violation {
  readonly id: string;
  readonly nodes: { readonly target: string[]; readonly failureSummary: string }[];
}

export async function violations(page: Page): Promise<string[]> {
  await page.evaluate(axe);
  const found = await page.evaluate(async () => {
    const runner = (window as unknown as { axe: { run: () => Promise<{ violations: Violation[] }> } }).axe;
    return (await runner.run()).violations;
  });
  return found.flatMap(({ id, nodes }) =>
    nodes.map(({ target, failureSummary }) => `${id} ${target} ${failureSummary}`),
  );
}
