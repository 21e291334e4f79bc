/** Serving the built page, whichever way: which file an address means, its type, and the headers that go with it. */
import { realpath, stat } from "node:fs/promises";
import { extname, join, relative, sep } from "node:path";

/** Only files of these kinds are part of the page. */
const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".json": "application/json; charset=utf-8",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".jpg": "image/jpeg",
  ".webp": "image/webp",
  ".ico": "image/x-icon",
  ".woff2": "font/woff2",
  ".wasm": "application/wasm",
  ".glb": "model/gltf-binary",
  ".hdr": "image/vnd.radiance",
  ".txt": "text/plain; charset=utf-8",
  ".webmanifest": "application/manifest+json",
};

/** The media type of a file by its ending, undefined for a kind that is not served. */
export const mediaType = (path: string): string | undefined => TYPES[extname(path).toLowerCase()];

/**
 * The one style sheet that the component library writes into the page by itself (react-aria, usePress);
 * tests/electron/site.test.ts computes it anew from the installed package.
 */
export const LIBRARY_STYLE_HASH = "sha256-38RhXrc7EdReTKsOm23ZPOCUgniTUUcjky8QOOrQx6o=";

/** Nothing but the page's own files; styles on elements are set by scripts, which the last line of defence allows. */
export const CONTENT_SECURITY_POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  `style-src 'self' '${LIBRARY_STYLE_HASH}'`,
  "style-src-attr 'unsafe-inline'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "media-src 'self' blob:",
  "connect-src 'self' blob: data:",
  "worker-src 'self'",
  "manifest-src 'self'",
  "frame-src 'self' blob:",
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join("; ");

/** Headers of every answer. */
export const SECURITY_HEADERS: Readonly<Record<string, string>> = {
  "Content-Security-Policy": CONTENT_SECURITY_POLICY,
  "X-Content-Type-Options": "nosniff",
  "Referrer-Policy": "no-referrer",
  "Cross-Origin-Opener-Policy": "same-origin",
  "Cross-Origin-Resource-Policy": "same-origin",
};

/** Files named after their content never change; the page that names them is asked for anew. */
export const cacheControl = (path: string): string =>
  /-[\w-]{8}\.\w+$/.test(path) ? "public, max-age=31536000, immutable" : "no-cache";

/**
 * The path below the site's folder that an address's path means, in its plain form with forward slashes;
 * undefined where it is malformed, would leave the folder, or names a hidden file or a kind that is not served.
 */
export function sitePath(urlPath: string): string | undefined {
  let path: string;
  try {
    path = decodeURIComponent(urlPath);
  } catch {
    return undefined;
  }
  if (!path.startsWith("/") || /[\0\\:]/.test(path)) return undefined;
  const steps = path.slice(1).split("/");
  if (steps.length === 1 && steps[0] === "") return "index.html";
  if (steps.some((step) => step === "" || step.startsWith("."))) return undefined;
  return mediaType(path) === undefined ? undefined : steps.join("/");
}

export interface SiteFile {
  /** Where it lies on the disk. */
  readonly path: string;
  readonly type: string;
  readonly cache: string;
}

/** The file an address's path means, undefined where there is none. A link that leads out of the folder leads nowhere. */
export async function findSiteFile(folder: string, urlPath: string): Promise<SiteFile | undefined> {
  const inside = sitePath(urlPath);
  const type = inside === undefined ? undefined : mediaType(inside);
  if (inside === undefined || type === undefined) return undefined;
  try {
    const [base, path] = await Promise.all([realpath(folder), realpath(join(folder, inside))]);
    const within = relative(base, path);
    if (within.startsWith("..") || within.startsWith(sep) || !(await stat(path)).isFile()) return undefined;
    return { path, type, cache: cacheControl(inside) };
  } catch {
    return undefined;
  }
}
