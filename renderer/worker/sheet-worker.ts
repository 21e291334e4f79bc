/** The thread of paper: fonts, PDF and archive are loaded only here. One question after the other. */
import { SheetDesk } from "./sheet-desk.ts";
import type { SheetAnswer, SheetOrder } from "./sheet-messages.ts";

const desk = new SheetDesk();
const say = (answer: SheetAnswer): void => (self as unknown as Worker).postMessage(answer);
let before: Promise<void> = Promise.resolve();

self.onmessage = ({ data }: MessageEvent<SheetOrder>): void => {
  before = before
    .then(() => desk.answer(data))
    .then(say, (error: unknown) => {
      const reason = error instanceof Error ? error.message : String(error);
      say({ id: data.id, kind: "refused", reasons: [reason] });
    });
};
