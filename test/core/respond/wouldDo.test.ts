import { describe, expect, it } from 'vitest';
import { wouldDo } from '../../../core/respond/wouldDo.ts';
import { parseRequest } from '../../../core/talk/parse.ts';
import { Session } from './session.ts';

const would = (session: Session, words: string) => wouldDo(session.bench, parseRequest(words, session.bench), session.now);

describe('what a request would do', () => {
  it.each([
    ['record leg two width three and five sixteenths', /^would write down leg two, width, three, and five sixteenths inches; would say “Leg two, width/],
    ['how long is the long rail', /^would say “Long rail, length/],
    ['done', /^would write down .* as done; would say/],
    ['show the parts', /^would show: parts$/],
    ['record leg two width twelve inches', /^would ask “/],
    ['be quiet', /^would fall silent$/],
    ['scratch that', /^would write down scratch that; would say “Scratched/],
    ['purple monkey', /^not understood: /],
  ])('of "%s" is told in a line', (words, sentence) => {
    expect(would(Session.withDemo(), words)).toMatch(sentence);
  });

  it('leaves the bench as it was', () => {
    const session = Session.withDemo();
    const { state, records, conversation } = session.bench;
    would(session, 'record leg two width three and five sixteenths');
    expect(session.bench).toMatchObject({ records, conversation });
    expect(session.bench.state).toBe(state);
    expect(state.measurements).toEqual([]);
  });
});

describe('the page to try the microphone', () => {
  it('is come to by voice', () => {
    for (const words of ['try the microphone', 'test microphone', 'can you hear me', 'show the microphone']) {
      const session = Session.withDemo();
      session.say(words);
      expect(session.bench.conversation.screen, words).toEqual({ name: 'microphone' });
    }
  });

  it('is left by voice', () => {
    const session = Session.withDemo();
    session.say('try the microphone');
    session.say('leave the microphone');
    expect(session.bench.conversation.screen).toEqual({ name: 'settings' });
  });
});
