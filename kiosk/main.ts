import './kiosk.ts';
import type { BenchKiosk } from './kiosk.ts';
import { Host } from './host/host.ts';
import { openBenchClock } from './store/clock.ts';
import { openStore } from './store/openStore.ts';

/** Start-up is recovery: the journal is read and compared first, then everything else wakes up around it. */
async function main(): Promise<void> {
  const kiosk = document.querySelector<BenchKiosk>('bench-kiosk');
  if (!kiosk) throw new Error('the page has no <bench-kiosk>');
  const [store, clock] = await Promise.all([openStore(), openBenchClock()]);
  const host = new Host({ store, clock, draw: (view) => (kiosk.view = view), screens: import('./screens/later.ts') });
  kiosk.addEventListener('bench-request', ({ detail }) => void host.submit(detail));
  kiosk.addEventListener('bench-act', ({ detail }) => void host.act(detail));
  await host.start();
}

void main();
