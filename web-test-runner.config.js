import { chromeLauncher } from '@web/test-runner-chrome';
import { esbuildPlugin } from '@web/dev-server-esbuild';
import { fileURLToPath } from 'node:url';
import { findChromium, CHROMIUM_FLAGS } from './deploy/chromium.mjs';

export default {
  files: 'test/kiosk/**/*.test.ts',
  nodeResolve: true,
  plugins: [esbuildPlugin({ ts: true, json: true, target: 'es2022', tsconfig: fileURLToPath(new URL('./tsconfig.json', import.meta.url)) })],
  concurrency: 1,
  browsers: [chromeLauncher({ launchOptions: { executablePath: findChromium(), headless: true, args: CHROMIUM_FLAGS } })],
  testFramework: { config: { timeout: 20000 } },
  // A file of screens takes half a minute alone, and minutes on a machine that has other work.
  testsFinishTimeout: 600_000,
};
