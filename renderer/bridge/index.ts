/** The page's surroundings: the desktop shell's bridge where there is one, else the browser's own means. */
import type { Bridge } from "../../electron/bridge.ts";
import { createBrowserBridge } from "./browser.ts";

export function surroundings(): Bridge {
  return window.swingstill ?? createBrowserBridge(window);
}
