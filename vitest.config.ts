import { defineConfig } from 'vitest/config';

process.env['TZ'] = 'UTC';

export default defineConfig({
  test: {
    projects: [
      // Generous: a test that takes a second on a quiet machine takes ten on a busy one.
      { test: { name: 'core', include: ['test/core/**/*.test.ts', 'test/reference/**/*.test.ts', 'test/deploy/**/*.test.ts'], testTimeout: 60_000, hookTimeout: 60_000 } },
      // Real Chromium, real microphone path: one file at a time, for the recogniser wants a core to itself.
      { test: { name: 'browser', include: ['test/voice/**/*.test.ts', 'test/keeping/**/*.test.ts'], fileParallelism: false, testTimeout: 120_000, hookTimeout: 120_000 } },
    ],
  },
});
