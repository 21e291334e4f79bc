/** The one gateway between page and shell. */
import { type BrowserWindow, type IpcMainInvokeEvent, ipcMain } from "electron";
import { reason } from "./door-files.ts";
import {
  CALL_CHANNEL,
  type CallName,
  type Calls,
  checkCall,
  EVENT_CHANNEL,
  Refusal,
  type Reply,
  type ShellEvent,
} from "./messages.ts";
import { isAppUrl } from "./urls.ts";

/** One handler for each request; every part of the shell brings its own. */
export type Handlers = { readonly [K in CallName]: (args: Calls[K]["args"]) => Promise<Calls[K]["result"]> };

/**
 * @param windowOf the window, as it is now
 * @param handlers what is done for each request that passes
 */
export function setUpIpc(windowOf: () => BrowserWindow | undefined, handlers: Handlers): void {
  ipcMain.handle(CALL_CHANNEL, async (event, name: unknown, args: unknown): Promise<Reply<unknown>> => {
    try {
      if (!isOurPage(event, windowOf())) throw new Refusal("this page may not ask the shell for anything");
      const call = checkCall(name, args);
      const handler = handlers[call.name] as (args: unknown) => Promise<unknown>;
      return { ok: true, value: await handler(call.args) };
    } catch (error) {
      return { ok: false, message: error instanceof Error ? reason(error) : String(error) };
    }
  });
}

/** Only the main frame of our window, and only while it shows the app. */
function isOurPage({ senderFrame }: IpcMainInvokeEvent, window: BrowserWindow | undefined): boolean {
  if (senderFrame === null || window === undefined || window.isDestroyed()) return false;
  return senderFrame === window.webContents.mainFrame && isAppUrl(senderFrame.url);
}

export function tell(window: BrowserWindow | undefined, event: ShellEvent): void {
  if (window === undefined || window.isDestroyed()) return;
  window.webContents.send(EVENT_CHANNEL, event);
}
