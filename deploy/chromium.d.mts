export const CHROMIUM_FLAGS: readonly string[];
/** Keeps the page's memory small. */
export const SPARING: string;
/** Path of the Chromium to test with; undefined when there is none. */
export function findChromium(): string | undefined;
/** @throws Error with one line that says how to point to a Chromium */
export function findOrInstallChromium(): string;
