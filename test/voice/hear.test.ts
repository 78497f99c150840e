import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';

const ROOT = join(import.meta.dirname, '..', '..');
const RECORDINGS = join(import.meta.dirname, 'recordings');

interface Line { readonly file: string; readonly error?: string; readonly heard?: { words: string; request: object; times: { endOfSpeech: number; heardAfterMs: number } }[]; readonly warnings?: string[]; readonly level?: { peakDb: number } }

test('recordings are heard by the kiosk\'s own ear, and what came of each is told in a line', () => {
  const folder = mkdtempSync(join(tmpdir(), 'heard-'));
  try {
    writeFileSync(join(folder, 'text.wav'), 'no sound');
    const files = [join(RECORDINGS, 'bench-next-step.wav'), join(RECORDINGS, 'how-long-is-the-long-rail.wav'), join(folder, 'text.wav'), join(folder, 'none.wav')];
    const done = spawnSync(process.execPath, ['--import', 'tsx', join(ROOT, 'deploy', 'hear.ts'), ...files], { cwd: ROOT, encoding: 'utf8', env: { ...process.env, BENCHCALL_DATA: folder } });
    const [first, second, third, fourth] = done.stdout.trim().split('\n').map((line) => JSON.parse(line) as Line);
    expect(first?.heard).toMatchObject([{ words: 'next step', request: { kind: 'next step' }, times: { endOfSpeech: 1.62 } }]);
    expect(first?.heard?.[0]?.times.heardAfterMs).toBeGreaterThan(300);
    expect(first?.level?.peakDb).toBeCloseTo(-9, 0);
    expect(second).toMatchObject({ heard: [], warnings: [expect.stringContaining('it was not addressed')] });
    expect(third?.error).toContain('no sound that the browser can read');
    expect(fourth?.error).toContain('ENOENT');
    expect(done.status).toBe(1);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}, 240_000);
