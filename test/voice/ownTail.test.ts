import { expect, test } from 'vitest';
import { respond } from '../../core/respond/respond.ts';
import { parseRequest } from '../../core/talk/parse.ts';
import { whatCanBeSaid } from '../../core/talk/sayable.ts';
import { renderSignals } from '../../sounds/signals/recipe.ts';
import { atTheEndFrame } from '../core/respond/session.ts';
import { NodeEngine } from './earInNode.ts';
import { KioskVoice, tailOf } from './kioskVoice.ts';
import { joined, quiet, recording } from './sound.ts';

/** A spread of what it says and every signal; all of it is played by npm run bench -- attention own-voice. */
const EVERY = 3;
/** No more of it is in the room by then. */
const lastOf = (reply: string) => reply.split(/[,.:?] /).at(-1) ?? reply;

test('when the ear wakes after the mouth spoke, nothing of what the room still carries is taken for a request, not even while it attends', async () => {
  const { bench, now } = atTheEndFrame();
  const voice = new KioskVoice();
  const replies = [...new Set(whatCanBeSaid(bench).filter((_, at) => at % EVERY === 0).map((words) => respond(bench, parseRequest(words, bench), now).reply.say))].filter((say) => say !== '');
  expect(replies.length).toBeGreaterThan(5);
  const ear = (await NodeEngine.start()).earOf(bench);
  ear.hear(quiet(2));
  for (const sound of [...replies.map((reply) => voice.say(lastOf(reply))), ...Object.values(renderSignals()).map(({ samples }) => samples)]) {
    ear.listenNow();
    ear.hear(joined(tailOf(sound), quiet(1.6)));
    ear.leave();
  }
  expect(ear.notes).toEqual([]);
  ear.listenNow();
  ear.hear(joined(recording('next-step'), quiet(1.6)));
  expect(ear.notes.map(({ noticed }) => noticed), 'it does hear').toEqual([{ kind: 'heard', words: 'next step' }]);
  ear.end();
});
