import { defineConfig } from 'vitest/config';

process.env['TZ'] = 'UTC';

const IN_CHROMIUM = { fileParallelism: false, testTimeout: 300_000, hookTimeout: 300_000 };

export default defineConfig({
  test: {
    projects: [
      // Generous: a test that takes a second on a quiet machine takes ten on a busy one. What a file imports is kept for the next one: core has no state of its own.
      { test: { name: 'core', include: ['test/core/**/*.test.ts', 'test/reference/**/*.test.ts', 'test/deploy/**/*.test.ts'], isolate: false, maxWorkers: 1, testTimeout: 60_000, hookTimeout: 60_000 } },
      // Real Chromium, and the real microphone path: one file at a time, for the recogniser wants a core to itself.
      { test: { name: 'keeping', include: ['test/keeping/**/*.test.ts'], ...IN_CHROMIUM } },
      { test: { name: 'voice', include: ['test/voice/**/*.test.ts'], ...IN_CHROMIUM } },
    ],
  },
});
