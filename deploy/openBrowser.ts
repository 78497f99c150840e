import { spawn } from 'node:child_process';
import { findChromium } from './chromium.mjs';

/** Opens an address on the screen, if there is one: Chromium as a window of its own, else whatever the system opens addresses with. */
export function openBrowser(address: string): void {
  const command = commandFor(address);
  if (!command) return;
  const child = spawn(command.program, command.words, { stdio: 'ignore', detached: true });
  child.on('error', () => console.log(`No browser could be opened: open ${address} yourself.`));
  child.unref();
}

function commandFor(address: string): { program: string; words: readonly string[] } | undefined {
  if (process.platform === 'darwin') return { program: 'open', words: [address] };
  if (process.platform === 'win32') return { program: 'cmd', words: ['/c', 'start', '', address] };
  if (!process.env['DISPLAY'] && !process.env['WAYLAND_DISPLAY']) return undefined;
  const chromium = findChromium();
  const asRoot = process.getuid?.() === 0 ? ['--no-sandbox'] : [];
  return chromium ? { program: chromium, words: [...asRoot, '--autoplay-policy=no-user-gesture-required', `--app=${address}/`] } : { program: 'xdg-open', words: [address] };
}
