import { createHash } from "node:crypto";
import {
  mkdirSync,
  mkdtempSync,
  readFileSync,
  realpathSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import {
  CONTENT_SECURITY_POLICY,
  cacheControl,
  findSiteFile,
  LIBRARY_STYLE_HASH,
  mediaType,
  sitePath,
} from "../../electron/site.ts";

let base = "";
let site = "";
beforeAll(() => {
  base = realpathSync(mkdtempSync(join(tmpdir(), "site-")));
  site = join(base, "renderer");
  mkdirSync(join(site, "assets"), { recursive: true });
  writeFileSync(join(site, "index.html"), "<p>page</p>");
  writeFileSync(join(site, "assets/index-Ab_c-123.js"), "1");
  writeFileSync(join(site, ".secret.json"), "{}");
  writeFileSync(join(base, "outside.json"), "{}");
  symlinkSync(join(base, "outside.json"), join(site, "link.json"));
});
afterAll(() => rmSync(base, { recursive: true, force: true }));

describe("an address's path", () => {
  test.each([
    ["/", "index.html"],
    ["/index.html", "index.html"],
    ["/assets/a%20b.js", "assets/a b.js"],
    ["/assets/Wide-latin_ext.woff2", "assets/Wide-latin_ext.woff2"],
  ])("%s means %s", (path, file) => expect(sitePath(path)).toBe(file));

  test.each([
    "",
    "index.html",
    "//index.html",
    "/../outside.json",
    "/assets/../../outside.json",
    "/%2e%2e/outside.json",
    "/assets/%2e%2e%2f%2e%2e%2foutside.json",
    "/..%5coutside.json",
    "/assets\\..\\x.js",
    "/%00index.html",
    "/index.html%00.js",
    "/%",
    "/%ff.js",
    "/.secret.json",
    "/.git/config.json",
    "/assets/",
    "/assets",
    "/c:/x.json",
    "/passwd",
    "/start.sh",
    "/main.ts",
    "/index.js.map",
  ])("%s means nothing", (path) => expect(sitePath(path)).toBeUndefined());
});

describe("a file of the site", () => {
  test("is found with its type and how long it may be kept", async () => {
    expect(await findSiteFile(site, "/")).toEqual({
      path: join(site, "index.html"),
      type: "text/html; charset=utf-8",
      cache: "no-cache",
    });
    expect(await findSiteFile(site, "/assets/index-Ab_c-123.js")).toMatchObject({
      type: "text/javascript; charset=utf-8",
      cache: "public, max-age=31536000, immutable",
    });
  });

  test.each(["/gone.js", "/link.json", "/.secret.json", "/../outside.json", "/assets"])(
    "%s is none",
    async (path) => {
      expect(await findSiteFile(site, path)).toBeUndefined();
    },
  );

  test("a folder that is not there has no files", async () => {
    expect(await findSiteFile(join(base, "nowhere"), "/")).toBeUndefined();
  });
});

test("types of what the page is made of, and of nothing else", () => {
  expect(mediaType("a/B.SVG")).toBe("image/svg+xml");
  expect(mediaType("a.woff2")).toBe("font/woff2");
  for (const path of ["a", "a.exe", "a.ts", "a.map", "a.door", "html"])
    expect(mediaType(path)).toBeUndefined();
});

test("only files named after their content are kept", () => {
  expect(cacheControl("assets/worker-D3adB33f.js")).toContain("immutable");
  for (const path of ["index.html", "assets/plain.js", "a-b.js"]) expect(cacheControl(path)).toBe("no-cache");
});

describe("the content security policy", () => {
  test("lets no foreign, inline or evaluated script through", () => {
    const scripts = CONTENT_SECURITY_POLICY.split("; ").filter((line) => line.startsWith("script-src"));
    expect(scripts).toEqual(["script-src 'self'"]);
    expect(CONTENT_SECURITY_POLICY).toContain("default-src 'none'");
    expect(CONTENT_SECURITY_POLICY).not.toMatch(/https?:|\*|unsafe-eval/);
  });

  test("knows the style sheet of the installed component library", () => {
    const file = resolve(
      import.meta.dirname,
      "../../node_modules/react-aria/dist/private/interactions/usePress.mjs",
    );
    const source = readFileSync(file, "utf8");
    const attribute = /PRESSABLE_ATTRIBUTE = '([^']+)'/.exec(source)?.[1];
    const template = /style\.textContent = `([^`]+)`\.trim\(\)/.exec(source)?.[1];
    expect(attribute).toBeDefined();
    const sheet = template?.replace(/\$\{[^}]+\}/, attribute ?? "").trim() ?? "";
    expect(`sha256-${createHash("sha256").update(sheet).digest("base64")}`).toBe(LIBRARY_STYLE_HASH);
  });
});
