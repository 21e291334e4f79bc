/** Lets through what three.js has to say, except one remark that the React binding causes with every picture. */
import { setConsoleFunction } from "three";

/** @react-three/fiber 9 still uses THREE.Clock; nothing here can change that. */
const KNOWN = "THREE.Clock: This module has been deprecated";

export function isWorthSaying(message: string): boolean {
  return !message.startsWith(KNOWN);
}

setConsoleFunction((kind: "log" | "warn" | "error", message: string, ...details: unknown[]) => {
  if (isWorthSaying(message)) console[kind](message, ...details);
});
