import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

const lib = fileURLToPath(new URL("./lib/", import.meta.url));

// Two entries, since an alias given as a plain string breaks sub-paths such as lakeproof/base/units.ts.
export default defineConfig({
  resolve: {
    alias: [
      { find: /^lakeproof$/, replacement: `${lib}mod.ts` },
      { find: /^lakeproof\/(.*)$/, replacement: `${lib}$1` },
    ],
  },
  test: {
    include: ["tests/**/*.test.ts"],
    pool: "forks",
    isolate: false,
    maxWorkers: 2,
    // A machine with other work must not fail a test: this only ends one that hangs.
    testTimeout: 900_000,
    hookTimeout: 900_000,
  },
});
