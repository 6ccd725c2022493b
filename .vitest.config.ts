import { defineConfig } from "vitest/config";

// Test processes colour what they print even into a pipe or a file, unless told not to.
if (!process.stdout.isTTY) process.env.NO_COLOR ??= "1";

export default defineConfig({
  test: {
    include: ["test/**/*.test.ts"],
    // All cores: by default one is left free.
    maxWorkers: "100%",
    testTimeout: 60_000,
    hookTimeout: 120_000,
  },
});
