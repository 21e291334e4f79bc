/** What leaves the page as a file: the swing's trace, a picture of the door, a film of the passage. */
import type { StoreApi } from "zustand/vanilla";
import type { Bridge } from "../../electron/bridge.ts";
import type { UiState } from "../shell/ui-store.ts";
import type { Page } from "../state/page-store.ts";
import type { Playhead } from "../state/playhead.ts";
import type { DoorView, SceneHandle } from "../state/view.ts";
import { traceCsv } from "./trace-csv.ts";

export interface ExportNeeds {
  readonly page: Page;
  readonly bridge: Bridge;
  readonly playhead: Playhead;
  readonly scene: { current: SceneHandle | null };
  readonly ui: StoreApi<UiState>;
}

export async function exportTrace({ page, bridge, ui }: ExportNeeds): Promise<void> {
  const view = viewAtHand(page);
  const bytes = new TextEncoder().encode(traceCsv(view.swing));
  const name = await bridge.saveBytes(`${stem(page)}-swing.csv`, bytes, "text/csv");
  if (name !== null) ui.setState({ said: `Swing written to ${name}` });
}

export async function exportPicture({ page, bridge, playhead, scene, ui }: ExportNeeds): Promise<void> {
  const { canvas, drawAt } = sceneAtHand(scene);
  drawAt(playhead.time);
  const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, "image/png"));
  if (blob === null) throw new Error("The browser gave no picture of the door.");
  const bytes = new Uint8Array(await blob.arrayBuffer());
  const name = await bridge.saveBytes(`${stem(page)}.png`, bytes, "image/png");
  if (name !== null) ui.setState({ said: `Picture written to ${name}` });
}

/** Plays the passage once, as fast as it is set to play, and records what the canvas shows. */
export async function exportFilm({ page, bridge, playhead, scene, ui }: ExportNeeds): Promise<void> {
  const { canvas } = sceneAtHand(scene);
  if (typeof MediaRecorder === "undefined" || !MediaRecorder.isTypeSupported("video/webm")) {
    throw new Error("This browser cannot record WebM films.");
  }
  ui.setState({ said: "Recording the passage" });
  const recorder = new MediaRecorder(canvas.captureStream(60), { mimeType: "video/webm" });
  const parts: Blob[] = [];
  recorder.ondataavailable = ({ data }) => parts.push(data);
  const stopped = new Promise<void>((resolve) => {
    recorder.onstop = () => resolve();
  });
  recorder.start();
  await playOnce(playhead);
  recorder.stop();
  await stopped;
  const bytes = new Uint8Array(await new Blob(parts).arrayBuffer());
  const name = await bridge.saveBytes(`${stem(page)}.webm`, bytes, "video/webm");
  if (name !== null) ui.setState({ said: `Film written to ${name}` });
}

/** From the stretch's start to its end; ends early where the person pauses. */
function playOnce(playhead: Playhead): Promise<void> {
  const { loop } = playhead.settings;
  playhead.setLoop(false);
  playhead.seek(playhead.settings.from);
  playhead.play();
  return new Promise((resolve) => {
    const unsubscribe = playhead.subscribeSettings(() => {
      if (playhead.settings.playing) return;
      unsubscribe();
      playhead.setLoop(loop);
      resolve();
    });
  });
}

function viewAtHand({ store }: Page): DoorView {
  const { view } = store.getState();
  if (view === null) throw new Error("There is no swing yet: the door has not been computed.");
  return view;
}

function sceneAtHand(scene: { current: SceneHandle | null }): SceneHandle {
  if (scene.current === null) throw new Error("The door is not on the screen: show it first.");
  return scene.current;
}

function stem({ store }: Page): string {
  return (store.getState().document?.name ?? "door").replace(/\.door\.json$/i, "");
}
