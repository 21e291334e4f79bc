/** Tokens that stand for files, so that the page can name a file without ever naming a path. */
import type { FileToken } from "./bridge.ts";

export interface TokenRegistry {
  /** The path's token; the same each time it is asked. */
  readonly issue: (path: string) => FileToken;
  /** @throws Error if the token was never given out */
  readonly pathOf: (token: FileToken) => string;
}

/** @param random 32 hexadecimal digits, unpredictable, different each time */
export function createTokenRegistry(random: () => string): TokenRegistry {
  const paths = new Map<FileToken, string>();
  const tokens = new Map<string, FileToken>();
  return {
    issue: (path) => {
      const known = tokens.get(path);
      if (known !== undefined) return known;
      const token = random() as FileToken;
      tokens.set(path, token);
      paths.set(token, path);
      return token;
    },
    pathOf: (token) => {
      const path = paths.get(token);
      if (path === undefined)
        throw new Error("This file was not chosen in this session. Please open it again.");
      return path;
    },
  };
}
