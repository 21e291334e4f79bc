/** The page over http on this machine alone, for where the desktop runtime cannot be had, and for tests. */
import { readFile } from "node:fs/promises";
import { createServer, type IncomingMessage, type Server, type ServerResponse } from "node:http";
import type { AddressInfo } from "node:net";
import { type Answer, answerRequest } from "./request.ts";

/** The port asked for first: what the browser keeps for the page (settings, unsaved work) hangs on the address. */
export const USUAL_PORT = 47_816;

export interface Site {
  /** With a slash at the end. */
  readonly url: string;
  readonly port: number;
  readonly close: () => Promise<void>;
}

/**
 * @param folder of the built page
 * @param wanted port to try first, 0 for any free one; where it is taken, any free one
 */
export async function serveSite(folder: string, wanted: number): Promise<Site> {
  const server = createServer((request, response) => {
    const { port } = server.address() as AddressInfo;
    reply(request, response, folder, port).catch(() => {
      if (!response.headersSent) response.writeHead(500);
      response.end();
    });
  });
  await listen(server, wanted).catch((error: NodeJS.ErrnoException) => {
    if (wanted === 0 || (error.code !== "EADDRINUSE" && error.code !== "EACCES")) throw error;
    return listen(server, 0);
  });
  const { port } = server.address() as AddressInfo;
  return { url: `http://127.0.0.1:${port}/`, port, close: () => closeServer(server) };
}

async function reply(
  request: IncomingMessage,
  response: ServerResponse,
  folder: string,
  port: number,
): Promise<void> {
  const { method, url, headers } = request;
  const answer = await answerRequest({ method, url, host: headers.host }, folder, port);
  const body = await bodyOf(answer);
  response.writeHead(answer.status, { ...answer.headers, "Content-Length": body.byteLength });
  response.end(method === "HEAD" ? undefined : body);
}

const bodyOf = async ({ body }: Answer): Promise<Buffer> =>
  "file" in body ? readFile(body.file) : Buffer.from(`${body.text}\n`);

const listen = (server: Server, port: number): Promise<void> =>
  new Promise((done, fail) => {
    server.once("error", fail);
    server.listen(port, "127.0.0.1", () => {
      server.removeListener("error", fail);
      done();
    });
  });

const closeServer = (server: Server): Promise<void> =>
  new Promise((done) => {
    server.close(() => done());
    server.closeAllConnections();
  });
