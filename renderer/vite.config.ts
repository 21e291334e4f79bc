import { resolve } from "node:path";
import react from "@vitejs/plugin-react";
import { defineConfig } from "vite";

const root = resolve(import.meta.dirname, "..");

export default defineConfig({
  root: import.meta.dirname,
  // The same files work under the desktop's own scheme and under any folder of a server.
  base: "./",
  publicDir: false,
  plugins: [react()],
  server: { host: "127.0.0.1", fs: { allow: [root] } },
  worker: { format: "es" },
  build: {
    outDir: resolve(root, "dist/renderer"),
    emptyOutDir: true,
    target: "es2022",
    // Everything a file of its own: the content security policy allows no data in place of one.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    chunkSizeWarningLimit: 1200,
  },
});
