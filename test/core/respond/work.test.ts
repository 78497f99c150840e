import { describe, expect, it } from 'vitest';
import { currentStep } from '../../../core/work/progress.ts';
import { likelyReplies } from '../../../core/respond/likely.ts';
import { stepsOf } from '../../../core/respond/views.ts';
import { Session } from './session.ts';

const HOUR_MS = 3_600_000;
const current = ({ bench }: Session) => currentStep(stepsOf(bench.state), bench.state);

describe('walking through the work', () => {
  it('begins with the first crosscut and says where it is', () => {
    const said = Session.withDemo().say('where am I');
    expect(said).toMatch(/^Step one of .* Rough crosscut, leg layers\./);
  });

  it('done goes on to the next step that the wood allows', () => {
    const session = Session.withDemo();
    const first = current(session);
    session.say('done');
    expect(session.bench.state.done.has(first?.id ?? '')).toBe(true);
    expect(current(session)?.id).not.toBe(first?.id);
  });

  it('does not let a step be done before what it stands on, and says which comes first', () => {
    const session = Session.withDemo();
    const glueUp = stepsOf(session.bench.state).find(({ operation }) => operation === 'lamination glue-up');
    session.request({ kind: 'go to step', step: glueUp?.id ?? '' });
    const reply = session.request({ kind: 'step done' });
    expect(reply.signal).toBe('wrong');
    expect(reply.say).toMatch(/^Not yet\..*First: /s);
    expect(session.entries).toEqual([]);
  });

  it('says a caution the first time in a day and not again an hour later', () => {
    const session = Session.withDemo();
    expect(session.say('where am I')).toMatch(/fingers/);
    session.wait(HOUR_MS);
    expect(session.say('where am I')).not.toMatch(/fingers/);
    session.wait(24 * HOUR_MS);
    expect(session.say('where am I')).toMatch(/fingers/);
  });

  it('the whole piece can be walked to its end, and everything asked for is recorded on the way', () => {
    const session = Session.withDemo();
    const steps = stepsOf(session.bench.state).length;
    for (let turn = 0; turn < steps * 12 && stepsOf(session.bench.state).some(({ id }) => !session.bench.state.done.has(id)); turn++) {
      const { question } = session.bench.conversation;
      if (question?.kind === 'length') {
        const planned = session.request({ kind: 'size', size: question.size, ...(question.copy === undefined ? {} : { copy: question.copy }) }).lengths?.[0];
        if (planned === undefined) throw new Error(`no length for ${question.size}`);
        session.request({ kind: 'record', size: question.size, ...(question.copy === undefined ? {} : { copy: question.copy }), length: planned });
        continue;
      }
      session.wait(100 * HOUR_MS);
      session.request({ kind: 'acknowledge' });
      session.request({ kind: 'step done' });
    }
    expect(session.bench.state.done.size).toBe(steps);
    expect(session.say('where am I')).toBe('Every step is done. The piece is finished.');
    expect(session.request({ kind: 'what no longer fits' }).say).toBe('Everything still fits.');
  }, 60_000);

  it('leg three gets its place, and the place is told with its steps', () => {
    const session = Session.withDemo();
    expect(session.say('leg three is front left')).toMatch(/leg three is front left/i);
    expect(session.say('leg two is front left')).toMatch(/taken by leg three/);
    expect(session.say('leg nine is front right')).not.toMatch(/noted|is front right\.$/);
  });
});

describe('what will probably be asked', () => {
  it('the sizes of the step are made ready in the very words in which they will be said', () => {
    const session = Session.withDemo();
    const ready = likelyReplies(session.bench, session.now);
    const [size] = current(session)?.sizes ?? [];
    expect(size).toBeDefined();
    if (size) expect(ready[0]).toBe(session.request({ kind: 'size', ...size }).say);
    expect(ready).toContain(session.request({ kind: 'tell the step', what: 'tools' }).say);
  });
});
