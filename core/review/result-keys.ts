/** Which keys of the door file a result rests on, directly or through other results. */
import { resultNamed } from "./results.ts";

/** All keys of a result, those of the results it is made from included; animals without their number. */
export function keysOf(name: string, seen: ReadonlySet<string> = new Set()): ReadonlySet<string> {
  const keys = new Set<string>();
  if (seen.has(name)) return keys;
  for (const input of resultNamed(name)?.inputs ?? []) {
    if ("key" in input) keys.add(input.key);
    else for (const key of keysOf(input.result, new Set([...seen, name]))) keys.add(key);
  }
  return keys;
}
