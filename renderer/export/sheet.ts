/** The build sheet and its files as one archive, written on a thread of its own. */
import { textOf } from "../state/page-store.ts";
import type { SheetAnswer, SheetOrder } from "../worker/sheet-messages.ts";
import { type ExportNeeds, stem } from "./exports.ts";

export async function exportSheet({ page, bridge, ui }: ExportNeeds): Promise<void> {
  const state = page.store.getState();
  const text = textOf(state);
  const { units, study } = state;
  const name = `${stem(page)}-build`;
  ui.setState({ said: "Writing the build sheet" });
  const order: SheetOrder = {
    text,
    units,
    paper: units === "inch" ? "letter" : "a4",
    study: study?.text === text ? study : null,
    name,
  };
  const answer = await askOnce(order);
  if (answer.kind === "refused") throw new Error(answer.reasons.join(" "));
  const saved = await bridge.saveBytes(`${name}.zip`, answer.bytes, "application/zip");
  if (saved !== null) ui.setState({ said: `Build sheet written to ${saved}` });
}

function askOnce(order: SheetOrder): Promise<SheetAnswer> {
  const worker = new Worker(new URL("../worker/sheet-worker.ts", import.meta.url), { type: "module" });
  return new Promise<SheetAnswer>((resolve, reject) => {
    worker.onmessage = ({ data }: MessageEvent<SheetAnswer>) => resolve(data);
    worker.onerror = ({ message }) => reject(new Error(message));
    worker.postMessage(order);
  }).finally(() => worker.terminate());
}
