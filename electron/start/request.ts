/** How the local server answers, decided without a socket. */
import { findSiteFile, SECURITY_HEADERS } from "../site.ts";

export interface Answer {
  readonly status: number;
  readonly headers: Readonly<Record<string, string>>;
  /** A file's path, or a sentence. */
  readonly body: { readonly file: string } | { readonly text: string };
}

export interface Request {
  readonly method: string | undefined;
  readonly host: string | undefined;
  readonly url: string | undefined;
}

/** Names the server answers to. Another name means that somebody's web page has pointed it here (DNS rebinding). */
export const isOwnHost = (host: string | undefined, port: number): boolean =>
  host === `127.0.0.1:${port}` || host === `localhost:${port}`;

/** @param folder of the built page */
export async function answerRequest(
  { method, host, url }: Request,
  folder: string,
  port: number,
): Promise<Answer> {
  if (!isOwnHost(host, port)) return sentence(421, "This server answers to its own address only.");
  if (method !== "GET" && method !== "HEAD")
    return sentence(405, "Only GET and HEAD.", { Allow: "GET, HEAD" });
  const path = (url ?? "").split(/[?#]/, 1)[0] ?? "";
  const file = await findSiteFile(folder, path);
  if (file === undefined) return sentence(404, "Not found.");
  const headers = { ...SECURITY_HEADERS, "Content-Type": file.type, "Cache-Control": file.cache };
  return { status: 200, headers, body: { file: file.path } };
}

const sentence = (status: number, text: string, headers: Readonly<Record<string, string>> = {}): Answer => ({
  status,
  headers: { ...SECURITY_HEADERS, "Content-Type": "text/plain; charset=utf-8", ...headers },
  body: { text },
});
