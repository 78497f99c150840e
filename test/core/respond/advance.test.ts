import { describe, expect, it } from 'vitest';
import { advance, benchFrom } from '../../../core/respond/advance.ts';

describe('the talk', () => {
  const told = advance(benchFrom([]), { say: 'Not yet.', note: 'Not yet. First: dry check.' }, []);

  it('leaves what was noted behind when another screen is shown, and can still be said again', () => {
    const { lastReply, screen } = advance(told, { say: '', screen: { name: 'clocks' } }, []).conversation;
    expect(screen).toEqual({ name: 'clocks' });
    expect(lastReply?.note).toBe('');
    expect(lastReply?.say).toBe('Not yet.');
  });

  it('keeps the note while the bench writes its own book', () => {
    expect(advance(told, { say: '' }, []).conversation.lastReply?.note).toBe('Not yet. First: dry check.');
  });
});
