/** The window shows the app's page and never anything else. */
import { app, type Session, shell, type WebContents } from "electron";
import { isAppUrl, mayLoad, opensOutside, PAGE_URL } from "./urls.ts";

/** What a page of the app may use of the system; all else is refused. */
const PERMISSIONS = new Set(["clipboard-sanitized-write", "fullscreen"]);

export function setUpNavigation(): void {
  app.on("web-contents-created", (_event, contents) => guard(contents));
}

function guard(contents: WebContents): void {
  contents.on("will-navigate", (details) => {
    if (details.url !== PAGE_URL) details.preventDefault();
  });
  contents.on("will-frame-navigate", (details) => {
    if (!mayLoad(details.url)) details.preventDefault();
  });
  contents.on("will-redirect", (details) => details.preventDefault());
  contents.on("will-attach-webview", (event) => event.preventDefault());
  contents.setWindowOpenHandler(({ url }) => {
    if (opensOutside(url)) void shell.openExternal(url);
    return { action: "deny" };
  });
}

/** No network, no permission beyond the few above, no download past the save dialog. */
export function setUpSession(session: Session): void {
  session.webRequest.onBeforeRequest((details, done) => done({ cancel: !mayLoad(details.url) }));
  session.setPermissionRequestHandler((contents, permission, done) =>
    done(PERMISSIONS.has(permission) && isAppUrl(contents.getURL())),
  );
  session.setPermissionCheckHandler(
    (_contents, permission, origin) => PERMISSIONS.has(permission) && isAppUrl(origin),
  );
  session.on("will-download", (event) => event.preventDefault());
}
