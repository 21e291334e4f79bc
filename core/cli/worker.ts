/** What a worker thread of the command line runs: bundled to worker.mjs beside the program. */
import { parentPort } from "node:worker_threads";
import { serveStudy } from "../study/channel.ts";

if (parentPort !== null) {
  const port = parentPort;
  serveStudy({
    post: (message) => port.postMessage(message),
    receive: (handler) => port.on("message", handler),
  });
}
