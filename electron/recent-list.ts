/** The list of doors opened or saved last: newest first, each once. */

/** As many as a menu shows at a glance. */
export const MOST_RECENT = 10;

export const remember = (list: readonly string[], path: string): readonly string[] =>
  [path, ...list.filter((other) => other !== path)].slice(0, MOST_RECENT);

export const forget = (list: readonly string[], path: string): readonly string[] =>
  list.filter((other) => other !== path);

/** The list from its file's text; anything else than a list of texts is an empty list. */
export function parseRecentList(text: string): readonly string[] {
  try {
    const value: unknown = JSON.parse(text);
    if (!Array.isArray(value)) return [];
    return value.filter((path) => typeof path === "string").slice(0, MOST_RECENT);
  } catch {
    return [];
  }
}
