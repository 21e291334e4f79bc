/** The page's own scheme: serves the built page and nothing else. */
import { readFile } from "node:fs/promises";
import { protocol } from "electron";
import { findSiteFile, SECURITY_HEADERS } from "./site.ts";
import { isAppUrl, SCHEME } from "./urls.ts";

/** To be called before the app is ready. */
export function declareScheme(): void {
  protocol.registerSchemesAsPrivileged([
    { scheme: SCHEME, privileges: { standard: true, secure: true, supportFetchAPI: true, codeCache: true } },
  ]);
}

/** @param site folder of the built page */
export function setUpProtocol(site: string): void {
  protocol.handle(SCHEME, async (request) => {
    if (request.method !== "GET" && request.method !== "HEAD") return answer(405, "only GET and HEAD");
    const file = isAppUrl(request.url) ? await findSiteFile(site, new URL(request.url).pathname) : undefined;
    if (file === undefined) return answer(404, "not found");
    const body = new Uint8Array(await readFile(file.path));
    return answer(200, body, { "Content-Type": file.type, "Cache-Control": file.cache });
  });
}

const answer = (
  status: number,
  body: string | Uint8Array<ArrayBuffer>,
  headers: Record<string, string> = {},
) =>
  new Response(body, { status, headers: { "Content-Type": "text/plain", ...SECURITY_HEADERS, ...headers } });
