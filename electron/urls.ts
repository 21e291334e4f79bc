/** Which addresses the shell trusts. */

export const SCHEME = "app";
const HOST = "swingstill";

/** Where the page lives. */
export const PAGE_URL = `${SCHEME}://${HOST}/index.html`;

const parse = (url: string): URL | undefined => (URL.canParse(url) ? new URL(url) : undefined);

/** Whether an address belongs to the app itself. */
export function isAppUrl(url: string): boolean {
  const parsed = parse(url);
  return (
    parsed !== undefined && parsed.protocol === `${SCHEME}:` && parsed.host === HOST && parsed.username === ""
  );
}

/** Whether an address may be handed to the person's browser: plain https, no name or password in it. */
export function opensOutside(url: string): boolean {
  const parsed = parse(url);
  return (
    parsed !== undefined && parsed.protocol === "https:" && parsed.username === "" && parsed.password === ""
  );
}

/** What the page may load: its own files, and data it made itself. */
export function mayLoad(url: string): boolean {
  const parsed = parse(url);
  if (parsed === undefined) return false;
  if (parsed.protocol === "blob:") return isAppUrl(parsed.pathname);
  return parsed.protocol === "data:" || parsed.protocol === "devtools:" || isAppUrl(url);
}
