/** What leaves the page as a file: the swing's trace, a picture of the door, a film of the passage. */
import type { StoreApi } from "zustand/vanilla";
import { traceCsv } from "../../core/swing/csv.ts";
import type { Bridge } from "../../electron/bridge.ts";
import type { UiState } from "../shell/ui-store.ts";
import type { Page } from "../state/page-store.ts";
import type { Playhead } from "../state/playhead.ts";
import type { DoorView } from "../state/view.ts";
import type { DoorSceneHandle } from "../three/scene-props.ts";

export interface ExportNeeds {
  readonly page: Page;
  readonly bridge: Bridge;
  readonly playhead: Playhead;
  readonly scene: { current: DoorSceneHandle | null };
  readonly ui: StoreApi<UiState>;
}

export async function exportTrace({ page, bridge, ui }: ExportNeeds): Promise<void> {
  const view = viewAtHand(page);
  const bytes = new TextEncoder().encode(traceCsv(view.swing));
  const name = await bridge.saveBytes(`${stem(page)}-swing.csv`, bytes, "text/csv");
  if (name !== null) ui.setState({ said: `Swing written to ${name}` });
}

export async function exportPicture({ page, bridge, scene, ui }: ExportNeeds): Promise<void> {
  const blob = await sceneAtHand(scene).capturePng();
  const bytes = new Uint8Array(await blob.arrayBuffer());
  const name = await bridge.saveBytes(`${stem(page)}.png`, bytes, "image/png");
  if (name !== null) ui.setState({ said: `Picture written to ${name}` });
}

/** Films the passage once, at the speed it is set to play. */
export async function exportFilm({ page, bridge, playhead, scene, ui }: ExportNeeds): Promise<void> {
  const { from, to, rate } = playhead.settings;
  playhead.pause();
  ui.setState({ said: `Filming the passage: ${Math.ceil((to - from) / rate)} s` });
  const blob = await sceneAtHand(scene).recordWebm({ from, to, rate });
  const bytes = new Uint8Array(await blob.arrayBuffer());
  const name = await bridge.saveBytes(`${stem(page)}.webm`, bytes, "video/webm");
  if (name !== null) ui.setState({ said: `Film written to ${name}` });
}

function viewAtHand({ store }: Page): DoorView {
  const { view } = store.getState();
  if (view === null) throw new Error("There is no swing yet: the door has not been computed.");
  return view;
}

function sceneAtHand(scene: { current: DoorSceneHandle | null }): DoorSceneHandle {
  if (scene.current === null) throw new Error("The door is not on the screen: show it first.");
  return scene.current;
}

export function stem({ store }: Page): string {
  return (store.getState().document?.name ?? "door").replace(/\.door\.json$/i, "");
}
