/** The policy of the page, and of everything that has no looser one of its own. */
export const PAGE_POLICY = [
  "default-src 'none'", "script-src 'self'", "style-src 'self'", "img-src 'self' data:", "font-src 'self'", "connect-src 'self'",
  "worker-src 'self'", "media-src 'self' blob:", "base-uri 'none'", "object-src 'none'", "frame-ancestors 'none'", "form-action 'none'",
  "require-trusted-types-for 'script'", 'trusted-types lit-html bench-workers',
].join('; ');

/**
 * A worker made from a file takes its policy from that file's own answer. The recogniser's engine builds functions from strings
 * and the voice compiles WebAssembly: each may, alone, so that the page never needs to.
 */
const WORKER_POLICIES: ReadonlyMap<string, string> = new Map([
  ['/ear/recogniser-worker.js', "default-src 'none'; script-src 'self' 'unsafe-eval'; connect-src 'self'"],
  ['/stock/plan-worker.js', "default-src 'none'; script-src 'self'"],
  ['/mouth/voice-worker.js', "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; connect-src 'self'"],
]);

/** The security headers for the answer to a path (already decoded, without the query). */
export function securityHeaders(path: string): Record<string, string> {
  return {
    'content-security-policy': WORKER_POLICIES.get(path) ?? PAGE_POLICY,
    'x-content-type-options': 'nosniff',
    'referrer-policy': 'no-referrer',
    'cross-origin-opener-policy': 'same-origin',
    'cross-origin-resource-policy': 'same-origin',
    'permissions-policy': 'microphone=(self), camera=(), geolocation=(), usb=(), serial=(), hid=(), payment=()',
  };
}
