import { createMouth, type Mouth, type MouthOptions } from '../../kiosk/mouth/mouth.ts';

/** The page that the mouth's tests run in: the mouth alone, and what it told, in order. */
export interface MouthPage {
  readonly log: { readonly event: string; readonly detail: string }[];
  readonly rendered: { readonly words: string; readonly samples: number }[];
  mouth: Mouth;
  make(options: Partial<MouthOptions>): Mouth;
}

declare global {
  interface Window { mouthPage: MouthPage }
}

function make(options: Partial<MouthOptions>): Mouth {
  const note = (event: string, detail = '') => { page.log.push({ event, detail }); };
  return createMouth({
    events: { speaking: (words) => note('speaking', words), silent: () => note('silent'), state: (state) => note('state', state.name) },
    deafen: () => {
      note('deaf');
      return () => note('hearing');
    },
    onRendered: (samples, words) => { page.rendered.push({ words, samples: samples.length }); },
    ...options,
  });
}

const page: MouthPage = { log: [], rendered: [], mouth: undefined as unknown as Mouth, make };
page.mouth = make({});
window.mouthPage = page;
if (location.hash === '#start') void page.mouth.start();
