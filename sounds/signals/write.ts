import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { writeWav } from '../wav.ts';
import { renderSignals, SIGNAL_RECIPES } from './recipe.ts';

/** Writes every signal as a WAV file beside this one, to be listened to. The kiosk itself renders them from the recipe when it starts. */
for (const [name, sound] of Object.entries(renderSignals())) {
  const file = join(import.meta.dirname, `${name.replaceAll(' ', '-')}.wav`);
  writeFileSync(file, writeWav(sound));
  const { rhythm } = SIGNAL_RECIPES[name as keyof typeof SIGNAL_RECIPES];
  console.log(`${rhythm.padEnd(10)} ${(sound.samples.length / sound.rate).toFixed(2)} s  ${file}`);
}
