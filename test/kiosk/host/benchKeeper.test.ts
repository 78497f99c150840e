import { assert } from '@open-wc/testing';
import type { Reply } from '../../../core/bench/reply.ts';
import type { Entry, JournalRecord } from '../../../core/journal/entry.ts';
import { makeRecords } from '../../../core/journal/record.ts';
import { BenchKeeper } from '../../../kiosk/host/bench.ts';
import { NotKept, type Store } from '../../../kiosk/store/store.ts';
import { moment } from '../storeHelp.ts';

/** A store in memory that can be told to keep nothing, and that notes when it has kept something. */
function memoryStore(order: string[]): Store & { fault: string } {
  const store = {
    records: [] as readonly JournalRecord[], snapshot: undefined, fault: '',
    status: { mode: 'writing', elsewhere: false, kept: 'twice', warnings: [], told: [] } as Store['status'],
    async append(entries: readonly Entry[]) {
      await Promise.resolve();
      if (store.fault !== '') throw new NotKept(store.fault);
      const added = makeRecords(entries, store.records.at(-1) ?? null, moment(store.records.length));
      store.records = [...store.records, ...added];
      order.push('kept');
      return added;
    },
    replaceWith: (records: readonly JournalRecord[]) => {
      store.records = records;
      return Promise.resolve();
    },
    onChange: () => () => undefined,
    keepSnapshot: () => Promise.resolve(),
    close: () => Promise.resolve(),
  };
  return store;
}

function keeperOn(order: string[]) {
  const store = memoryStore(order);
  const replies: Reply[] = [];
  const keeper = new BenchKeeper({
    answering: import('../../../kiosk/host/answering.ts'),
    store, now: () => moment(store.records.length), changed: () => undefined,
    answered: (reply) => {
      order.push('said');
      replies.push(reply);
    },
  });
  return { store, keeper, replies };
}

describe('what the bench answers', () => {
  it('is said only after it was written down', async () => {
    const order: string[] = [];
    const { keeper } = keeperOn(order);
    await keeper.submit({ kind: 'note', text: 'the left cheek is proud' });
    assert.deepEqual(order, ['kept', 'said']);
  });

  it('is the reason when it could not be written down, and nothing of it stands', async () => {
    const { store, keeper, replies } = keeperOn([]);
    store.fault = 'The disk is full. What was recorded before is safe.';
    await keeper.submit({ kind: 'note', text: 'the left cheek is proud' });
    assert.equal(replies[0]?.say, store.fault);
    assert.deepEqual(keeper.bench.state.notes, []);
    store.fault = '';
    await keeper.submit({ kind: 'note', text: 'the left cheek is proud' });
    assert.equal(keeper.bench.state.notes.length, 1);
  });

  it('comes in the order in which it was asked', async () => {
    const { keeper, replies } = keeperOn([]);
    await Promise.all(['one', 'two', 'three'].map((text) => keeper.submit({ kind: 'note', text })));
    assert.deepEqual(replies.map(({ say }) => say), ['Noted: one.', 'Noted: two.', 'Noted: three.']);
  });

  it('leaves an open question open while the bench keeps its own books', async () => {
    const { keeper } = keeperOn([]);
    await keeper.submit({ kind: 'which', choices: [{ say: 'long rail', request: { kind: 'where am I' } }, { say: 'short rail', request: { kind: 'where am I' } }] });
    await keeper.note([{ kind: 'clock seen', note: 'heartbeat' }]);
    assert.equal(keeper.bench.conversation.question?.kind, 'which');
  });

  it('says so when something breaks inside, and goes on', async () => {
    const { store, keeper, replies } = keeperOn([]);
    const append = store.append.bind(store);
    store.append = () => Promise.reject(new Error('a bug'));
    await keeper.submit({ kind: 'note', text: 'lost' });
    assert.match(replies[0]?.say ?? '', /Nothing was written down/);
    store.append = append;
    await keeper.submit({ kind: 'note', text: 'kept' });
    assert.deepEqual(keeper.bench.state.notes.map(({ text }) => text), ['kept']);
  });
});
