import { writeFileSync } from 'node:fs';
import { checkModel } from './check.ts';
import type { CheckAsked } from './checkApart.ts';
import { packModel } from './pack.ts';

/** The other end of checkApart: checks one model, packs a good one for the kiosk, tells the verdict, and ends. */
process.once('message', (asked: CheckAsked) => {
  void answer(asked).finally(() => process.disconnect());
});

async function answer({ path, pieceTexts, packTo }: CheckAsked): Promise<void> {
  const { verdict, files } = await checkModel(path, pieceTexts);
  if (files) writeFileSync(packTo, packModel(files));
  await new Promise<void>((told) => process.send?.(verdict, undefined, undefined, () => told()));
}
