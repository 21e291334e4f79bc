/** The example doors' text, for tests of the page. */
import { readFileSync } from "node:fs";

export function exampleText(name: string): string {
  return readFileSync(new URL(`../../assets/examples/${name}.door.json`, import.meta.url), "utf8");
}
