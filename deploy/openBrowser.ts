import { spawn } from 'node:child_process';
import { findChromium, SPARING } from './chromium.mjs';

/** Sound without a first touch, clocks that run on behind another window, and no questions at the start. */
const KIOSK_FLAGS = [
  '--autoplay-policy=no-user-gesture-required', '--no-first-run', '--hide-crash-restore-bubble', '--disable-background-timer-throttling',
  '--disable-backgrounding-occluded-windows', '--disable-renderer-backgrounding', SPARING,
];

/**
 * Opens an address on the screen, if there is one: Chromium as a window of its own, else whatever the system opens addresses with.
 * @param profile Chromium's folder for this alone, so that clearing a browser's history does not clear the journal's copy
 */
export function openBrowser(address: string, profile: string): void {
  const command = commandFor(address, profile);
  if (!command) return;
  const child = spawn(command.program, command.words, { stdio: 'ignore', detached: true });
  child.on('error', () => console.log(`No browser could be opened: open ${address} yourself.`));
  child.unref();
}

function commandFor(address: string, profile: string): { program: string; words: readonly string[] } | undefined {
  if (process.platform === 'darwin') return { program: 'open', words: [address] };
  if (process.platform === 'win32') return { program: 'cmd', words: ['/c', 'start', '', address] };
  if (!process.env['DISPLAY'] && !process.env['WAYLAND_DISPLAY']) return undefined;
  const chromium = findChromium();
  const asRoot = process.getuid?.() === 0 ? ['--no-sandbox'] : [];
  return chromium ? { program: chromium, words: [...asRoot, ...KIOSK_FLAGS, `--user-data-dir=${profile}`, `--app=${address}/`] } : { program: 'xdg-open', words: [address] };
}
