/** The build sheet and all that goes with it as one archive. */
import type { StoreApi } from "zustand/vanilla";
import type { Settings } from "../state/settings.ts";
import { type ExportNeeds, stem } from "./exports.ts";
import { createSheetClient, taskOf } from "./sheet-client.ts";

export async function exportSheet({
  page,
  bridge,
  ui,
  settings,
}: ExportNeeds & { readonly settings: StoreApi<Settings> }): Promise<void> {
  const name = `${stem(page)}-build`;
  ui.setState({ said: "Writing the sheets" });
  const client = createSheetClient();
  try {
    const bytes = await client.archive(taskOf(page.store.getState(), settings.getState()), name);
    const saved = await bridge.saveBytes(`${name}.zip`, bytes, "application/zip");
    if (saved !== null) ui.setState({ said: `All sheets written to ${saved}` });
  } finally {
    client.end();
  }
}
