/** A fault beside its input: the path is not repeated, the rest is a sentence. */
import type { DoorFault } from "../../core/door/index.ts";

export function faultWords({ path, message }: DoorFault): string {
  const bare = message.startsWith(`${path}: `) ? message.slice(path.length + 2) : message;
  return bare.charAt(0).toUpperCase() + bare.slice(1);
}
