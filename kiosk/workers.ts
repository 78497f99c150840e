import type { TrustedScriptURL, TrustedTypePolicyFactory } from 'trusted-types/lib';

/**
 * The scripts that run beside the page. The page's policy lets a script be started only through a named Trusted Types policy;
 * this is ours ('bench-workers' in deploy/headers.ts), and it knows these addresses and no others.
 */
const WORKERS = ['/ear/recogniser-worker.js', '/mouth/voice-worker.js', '/stock/plan-worker.js'] as const;
export type WorkerAddress = (typeof WORKERS)[number];

const policy = (globalThis as { trustedTypes?: TrustedTypePolicyFactory }).trustedTypes?.createPolicy('bench-workers', {
  createScriptURL(address) {
    if (WORKERS.some((worker) => worker === address)) return address;
    throw new TypeError(`${address} is not one of the kiosk's workers`);
  },
});

/** Starts one of the kiosk's workers; `name` is what the browser's own tools call it. */
export function startWorker(address: WorkerAddress, name: string): Worker {
  const trusted: TrustedScriptURL | string = policy?.createScriptURL(address) ?? address;
  return new Worker(trusted as string, { type: 'module', name });
}
