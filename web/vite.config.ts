import react from "@vitejs/plugin-react";
import { defineConfig } from "vite";
import { offlineWorker } from "./offline/plugin.ts";
import { texts } from "./texts/plugin.ts";

const BASE =
  /node_modules[\\/](react|react-dom|scheduler|@tanstack)[\\/]|web[\\/](api|format|kept|now)\.ts|engine[\\/](name|measure[\\/](amount|range))\.ts/;

/** What both halves of the count keep on the device. */
const COUNT = /web[\\/]count[\\/](chosen|waiting|sheet|differences)\.ts/;

export default defineConfig(({ command }) => {
  // A build started from a test run would inherit its NODE_ENV and ship React's slow, talkative half.
  if (command === "build") process.env.NODE_ENV = "production";
  return {
    root: import.meta.dirname,
    plugins: [react(), texts(), offlineWorker()],
    resolve: { conditions: ["ullage-source", "module", "browser", "development|production"] },
    build: {
      outDir: "../dist/web",
      emptyOutDir: true,
      manifest: true,
      modulePreload: { polyfill: false },
      // What every screen needs is one file, and so is what the count does: many small ones compress worse.
      rolldownOptions: {
        output: {
          codeSplitting: {
            groups: [
              { name: "base", test: BASE },
              { name: "count", test: COUNT },
            ],
          },
        },
      },
    },
    server: { proxy: { "/api": "http://127.0.0.1:4680" } },
  };
});
