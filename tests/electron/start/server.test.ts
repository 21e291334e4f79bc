import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { request } from "node:http";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { isOwnHost } from "../../../electron/start/request.ts";
import { type Site, serveSite } from "../../../electron/start/server.ts";

let folder = "";
let site: Site;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "served-"));
  mkdirSync(join(folder, "renderer/assets"), { recursive: true });
  writeFileSync(join(folder, "renderer/index.html"), "<p>page</p>");
  writeFileSync(join(folder, "renderer/assets/a.js"), "1;");
  writeFileSync(join(folder, "secret.json"), "{}");
  site = await serveSite(join(folder, "renderer"), 0);
});
afterAll(async () => {
  await site.close();
  rmSync(folder, { recursive: true, force: true });
});

interface Got {
  readonly status: number;
  readonly headers: Readonly<Record<string, unknown>>;
  readonly body: string;
}

/** A request with the path exactly as given: other clients tidy it first. */
function ask(path: string, method = "GET", host?: string): Promise<Got> {
  const headers = host === undefined ? {} : { host };
  return new Promise((done, fail) => {
    const sent = request({ port: site.port, host: "127.0.0.1", path, method, headers }, (response) => {
      let body = "";
      response.on("data", (data) => {
        body += String(data);
      });
      response.on("end", () => done({ status: response.statusCode ?? 0, headers: response.headers, body }));
    });
    sent.on("error", fail);
    sent.end();
  });
}

describe("the local server", () => {
  test("serves the page with its headers", async () => {
    const got = await ask("/");
    expect(got).toMatchObject({ status: 200, body: "<p>page</p>" });
    expect(got.headers).toMatchObject({
      "content-type": "text/html; charset=utf-8",
      "x-content-type-options": "nosniff",
      "cross-origin-resource-policy": "same-origin",
    });
    expect(got.headers["content-security-policy"]).toContain("default-src 'none'");
    expect(got.headers["access-control-allow-origin"]).toBeUndefined();
    expect((await ask("/assets/a.js?v=1")).headers["content-type"]).toBe("text/javascript; charset=utf-8");
  });

  test("answers HEAD without a body", async () => {
    const got = await ask("/", "HEAD");
    expect(got).toMatchObject({ status: 200, body: "" });
    expect(got.headers["content-length"]).toBe("11");
  });

  test.each(["POST", "PUT", "DELETE", "OPTIONS", "PATCH"])("refuses %s", async (method) => {
    const got = await ask("/", method);
    expect(got.status).toBe(405);
    expect(got.headers.allow).toBe("GET, HEAD");
  });

  test.each([
    "/../secret.json",
    "/%2e%2e/secret.json",
    "/assets/..%2f..%2fsecret.json",
    "/assets/%2e%2e/%2e%2e/secret.json",
    "/gone.js",
    "http://127.0.0.1/secret.json",
    "/%",
  ])("has nothing at %s", async (path) => {
    const got = await ask(path);
    expect(got.status).toBe(404);
    expect(got.headers["content-security-policy"]).toBeDefined();
  });

  test("answers to its own name only", async () => {
    expect((await ask("/", "GET", `localhost:${site.port}`)).status).toBe(200);
    for (const host of [
      "example.org",
      `example.org:${site.port}`,
      "127.0.0.1",
      `127.0.0.1.example.org:${site.port}`,
    ])
      expect((await ask("/", "GET", host)).status).toBe(421);
  });

  test("takes another port where the wanted one is taken", async () => {
    const second = await serveSite(join(folder, "renderer"), site.port);
    expect(second.port).not.toBe(site.port);
    expect((await fetch(second.url)).status).toBe(200);
    await second.close();
  });
});

test("a host without the port, another port, or none at all is not ours", () => {
  expect(isOwnHost("127.0.0.1:80", 80)).toBe(true);
  for (const host of [undefined, "", "127.0.0.1", "127.0.0.1:81", "[::1]:80", "LOCALHOST.evil:80"])
    expect(isOwnHost(host, 80)).toBe(false);
});
