import { assert } from '@open-wc/testing';
import { makeRecords } from '../../core/journal/record.ts';
import type { JournalRecord } from '../../core/journal/entry.ts';
import { browserCopy } from '../../kiosk/store/browserCopy.ts';
import { CopyFault } from '../../kiosk/store/copy.ts';
import { openStore } from '../../kiosk/store/openStore.ts';
import { NotKept, type Store } from '../../kiosk/store/store.ts';
import { FakeCopy, freshName, moment, note, textsOf } from './storeHelp.ts';

const away = new CopyFault('away', 'the bench\'s server does not answer');
const full = new CopyFault('no space', 'the disk is full');

function journal(...texts: string[]): readonly JournalRecord[] {
  const records: JournalRecord[] = [];
  for (const text of texts) records.push(...makeRecords([note(text)], records.at(-1) ?? null, moment(records.length)));
  return records;
}

async function rejects(work: Promise<unknown>): Promise<Error> {
  try {
    await work;
  } catch (error) {
    return error as Error;
  }
  throw new Error('this was expected to fail');
}

async function until(condition: () => boolean, ms = 5_000): Promise<void> {
  const end = performance.now() + ms;
  while (!condition()) {
    if (performance.now() > end) throw new Error('it did not come to pass in time');
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
}

describe('the journal in the browser and beside the keeper', () => {
  const open: Store[] = [];
  const openWith = async (options: Parameters<typeof openStore>[0]) => {
    const store = await openStore(options);
    open.push(store);
    return store;
  };
  afterEach(async () => {
    for (const store of open.splice(0)) await store.close();
  });

  it('writes what is recorded into both copies before it answers, and reads it again', async () => {
    const name = freshName();
    const keeper = new FakeCopy('the journal\'s file');
    const store = await openWith({ name, keeper });
    const written = await store.append([note('leg one is 1/32 full'), note('leg two is true')], moment(5));
    assert.deepEqual(written.map(({ number, act }) => [number, act]), [[1, 1], [2, 1]]);
    assert.deepEqual(textsOf(keeper.records), ['leg one is 1/32 full', 'leg two is true']);
    assert.deepEqual(store.status, { mode: 'writing', elsewhere: false, kept: 'twice', warnings: [], told: [] });
    await store.close();
    const copy = browserCopy(name, () => undefined);
    assert.deepEqual((await copy.readAfter(0)) as JournalRecord[], [...written]);
    copy.close();
    const again = await openWith({ name, keeper });
    assert.deepEqual(again.records, written);
    assert.deepEqual(again.status.told, []);
  });

  it('a whole other journal takes the place of the old one in both copies, and what was there is set aside', async () => {
    const name = freshName();
    const keeper = new FakeCopy('the journal\'s file');
    const browser = new FakeCopy('the browser\'s database');
    const store = await openWith({ name, keeper, browser: () => browser });
    for (const text of ['leg one', 'leg two', 'leg three']) await store.append([note(text)], moment());
    const backup = journal('long rail', 'short rail');
    await store.replaceWith(backup);
    assert.deepEqual(store.records, backup);
    for (const copy of [keeper, browser]) {
      assert.deepEqual(copy.records, [...backup]);
      assert.deepEqual(textsOf(copy.aside as JournalRecord[]), ['leg one', 'leg two', 'leg three']);
    }
    await store.append([note('top')], moment());
    assert.deepEqual(textsOf(keeper.records), ['long rail', 'short rail', 'top']);
  });

  it('a journal that can be kept nowhere is not taken in, and says so', async () => {
    const keeper = new FakeCopy('the journal\'s file');
    const browser = new FakeCopy('the browser\'s database');
    const store = await openWith({ name: freshName(), keeper, browser: () => browser });
    await store.append([note('leg one')], moment());
    keeper.fault = away;
    browser.fault = full;
    assert.instanceOf(await rejects(store.replaceWith(journal('long rail'))), NotKept);
    assert.deepEqual(textsOf(store.records), ['leg one']);
    keeper.fault = undefined;
    browser.fault = undefined;
  });

  it('takes an empty browser beside a full file for a loss restored, when the browser had a journal before', async () => {
    const name = freshName();
    const keeper = new FakeCopy('the journal\'s file');
    const store = await openWith({ name, keeper });
    for (const text of ['one', 'two', 'three']) await store.append([note(text)], moment());
    await store.close();
    const emptied = new FakeCopy('the browser\'s database');
    const again = await openWith({ name, keeper, browser: () => emptied });
    assert.deepEqual(textsOf(again.records), ['one', 'two', 'three']);
    assert.deepEqual(textsOf(emptied.records), ['one', 'two', 'three']);
    assert.deepEqual(again.status.told, ['The browser had lost its journal. It was restored from the journal\'s file: 3 entries.']);
  });

  it('takes over the file\'s entries into a browser that never had any, and says so', async () => {
    const keeper = new FakeCopy('the journal\'s file', journal('one', 'two'));
    const store = await openWith({ name: freshName(), keeper });
    assert.deepEqual(textsOf(store.records), ['one', 'two']);
    assert.deepEqual(store.status.told, ['This browser had no journal yet. 2 entries were taken over from the journal\'s file on this machine.']);
  });

  it('writes the file again from the browser when the file is short', async () => {
    const browser = new FakeCopy('the browser\'s database', journal('one', 'two', 'three'));
    const keeper = new FakeCopy('the journal\'s file', journal('one'));
    const store = await openWith({ name: freshName(), keeper, browser: () => browser });
    assert.deepEqual(textsOf(keeper.records), ['one', 'two', 'three']);
    assert.deepEqual(store.status.told, ['2 entries were missing in the journal\'s file and written again from the browser.']);
  });

  it('cuts a damaged browser copy back to its sound beginning, keeps the rest aside, and restores from the file', async () => {
    const sound = journal('one', 'two', 'three', 'four');
    const damaged = sound.map((record) => (record.number === 2 ? { ...record, entry: note('forged') } : record));
    const browser = new FakeCopy('the browser\'s database', damaged);
    const keeper = new FakeCopy('the journal\'s file', sound);
    const store = await openWith({ name: freshName(), keeper, browser: () => browser });
    assert.deepEqual(textsOf(store.records), ['one', 'two', 'three', 'four']);
    assert.deepEqual(browser.records, [...sound]);
    assert.equal(browser.aside.length, 3);
    assert.deepEqual(store.status.told, ['The browser\'s journal was damaged after entry 1. 3 entries were restored from the journal\'s file.']);
  });

  it('joins sound pieces of both: what stands beyond a hole in one counts when the other fills the hole', async () => {
    const sound = journal('one', 'two', 'three', 'four', 'five');
    const browser = new FakeCopy('the browser\'s database', sound.filter(({ number }) => number !== 2));
    const keeper = new FakeCopy('the journal\'s file', sound.slice(0, 3));
    const store = await openWith({ name: freshName(), keeper, browser: () => browser });
    assert.deepEqual(textsOf(store.records), ['one', 'two', 'three', 'four', 'five']);
    assert.deepEqual(keeper.records, [...sound]);
  });

  it('keeps the longer of two journals that parted, and sets the other\'s entries aside', async () => {
    const browser = new FakeCopy('the browser\'s database', journal('one', 'mine', 'mine too'));
    const keeper = new FakeCopy('the journal\'s file', journal('one', 'theirs'));
    const store = await openWith({ name: freshName(), keeper, browser: () => browser });
    assert.deepEqual(textsOf(store.records), ['one', 'mine', 'mine too']);
    assert.deepEqual(textsOf(keeper.records), ['one', 'mine', 'mine too']);
    assert.equal(keeper.aside.length, 1);
    assert.match(store.status.told.join(' '), /From entry 2 on the browser and the journal's file differed/);
  });

  it('says which entries are in neither copy when both lost some', async () => {
    const name = freshName();
    const store = await openWith({ name, keeper: new FakeCopy('the journal\'s file') });
    for (const text of ['one', 'two', 'three']) await store.append([note(text)], moment());
    await store.close();
    const again = await openWith({ name, keeper: new FakeCopy('the journal\'s file', journal('one')), browser: () => new FakeCopy('the browser\'s database') });
    assert.match(again.status.told.join(' '), /2 entries that were kept before \(up to number 3\) can be found in neither copy/);
  });

  it('goes on in the browser alone while the keeper is away, says so, and catches the file up in order', async () => {
    const keeper = new FakeCopy('the journal\'s file');
    keeper.fault = away;
    const store = await openWith({ name: freshName(), keeper });
    await store.append([note('one')], moment());
    await store.append([note('two')], moment());
    assert.equal(store.status.kept, 'browser');
    assert.match(store.status.warnings.join(' '), /server does not answer. Entries are kept in the browser's database alone/);
    keeper.fault = undefined;
    let told = 0;
    store.onChange(() => (told += 1));
    await until(() => store.status.kept === 'twice');
    assert.deepEqual(textsOf(keeper.records), ['one', 'two']);
    assert.isAbove(told, 0);
    assert.deepEqual(store.status.warnings, []);
    assert.include(store.status.told, 'The journal\'s file can be written again and has caught up.');
  });

  it('goes on in the file alone where the browser refuses its database', async () => {
    const browser = new FakeCopy('the browser\'s database');
    browser.fault = new CopyFault('broken', 'the browser does not let this page keep anything');
    const keeper = new FakeCopy('the journal\'s file', journal('one'));
    const store = await openWith({ name: freshName(), keeper, browser: () => browser });
    await store.append([note('two')], moment());
    assert.deepEqual(textsOf(keeper.records), ['one', 'two']);
    assert.equal(store.status.kept, 'keeper');
    assert.match(store.status.warnings.join(' '), /does not let this page keep anything. Entries are kept in the journal's file alone/);
  });

  it('warns loudly that nothing lasts when neither copy can be had, and still works', async () => {
    const browser = new FakeCopy('the browser\'s database');
    const keeper = new FakeCopy('the journal\'s file');
    browser.fault = new CopyFault('broken', 'the browser does not let this page keep anything');
    keeper.fault = away;
    const store = await openWith({ name: freshName(), keeper, browser: () => browser });
    await store.append([note('one')], moment());
    assert.deepEqual(textsOf(store.records), ['one']);
    assert.equal(store.status.kept, 'memory');
    assert.match(store.status.warnings.join(' '), /NOTHING IS BEING KEPT/);
  });

  it('refuses what neither copy takes, keeps nothing of it, and takes it once there is room', async () => {
    const browser = new FakeCopy('the browser\'s database');
    const keeper = new FakeCopy('the journal\'s file');
    const store = await openWith({ name: freshName(), keeper, browser: () => browser });
    await store.append([note('one')], moment());
    browser.fault = full;
    keeper.fault = full;
    const error = await rejects(store.append([note('two')], moment()));
    assert.instanceOf(error, NotKept);
    assert.match(error.message, /could not be written down and is not kept: the disk is full/);
    assert.deepEqual(textsOf(store.records), ['one']);
    browser.fault = undefined;
    keeper.fault = undefined;
    await store.append([note('three')], moment());
    assert.deepEqual(textsOf(keeper.records), ['one', 'three']);
    assert.deepEqual(textsOf(browser.records), ['one', 'three']);
  });

  it('takes over what was written although the answer was lost, rather than writing over it', async () => {
    const browser = new FakeCopy('the browser\'s database');
    const keeper = new FakeCopy('the journal\'s file');
    const store = await openWith({ name: freshName(), keeper, browser: () => browser });
    browser.fault = full;
    keeper.losesAnswers = true;
    await rejects(store.append([note('written, but unconfirmed')], moment()));
    keeper.losesAnswers = false;
    browser.fault = undefined;
    const error = await rejects(store.append([note('the next')], moment()));
    assert.match(error.message, /The journal had grown meanwhile/);
    assert.deepEqual(textsOf(store.records), ['written, but unconfirmed']);
    await store.append([note('the next')], moment());
    assert.deepEqual(textsOf(keeper.records), ['written, but unconfirmed', 'the next']);
    assert.deepEqual(textsOf(browser.records), ['written, but unconfirmed', 'the next']);
  });

  it('does not write over what another browser wrote into the file', async () => {
    const keeper = new FakeCopy('the journal\'s file', journal('one'));
    const mine = await openWith({ name: freshName(), keeper });
    const theirs = await openWith({ name: freshName(), keeper });
    await theirs.append([note('theirs')], moment());
    await rejects(mine.append([note('mine')], moment()));
    assert.deepEqual(textsOf(mine.records), ['one', 'theirs']);
    await mine.append([note('mine')], moment());
    assert.deepEqual(textsOf(keeper.records), ['one', 'theirs', 'mine']);
  });

  it('writes the rest again when the server comes back with a file that had been cut', async () => {
    const keeper = new FakeCopy('the journal\'s file');
    const store = await openWith({ name: freshName(), keeper });
    for (const text of ['one', 'two', 'three']) await store.append([note(text)], moment());
    keeper.records.length = 1;
    await store.append([note('four')], moment());
    assert.deepEqual(textsOf(keeper.records), ['one', 'two', 'three', 'four']);
  });

  it('lets one window write at a time: the second shows, follows, and takes over when the first closes', async () => {
    const name = freshName();
    const keeper = new FakeCopy('the journal\'s file');
    const first = await openWith({ name, keeper });
    await first.append([note('one')], moment());
    const second = await openWith({ name, keeper });
    assert.equal(second.status.mode, 'read only');
    assert.match(second.status.warnings.join(' '), /open in another window/);
    assert.instanceOf(await rejects(second.append([note('no')], moment())), NotKept);
    await first.append([note('two')], moment());
    await until(() => second.records.length === 2);
    await first.close();
    await until(() => second.status.mode === 'writing');
    await second.append([note('three')], moment());
    assert.deepEqual(textsOf(keeper.records), ['one', 'two', 'three']);
  });

  it('keeps a hundred appends asked for at once in order and whole', async () => {
    const keeper = new FakeCopy('the journal\'s file');
    const store = await openWith({ name: freshName(), keeper });
    await Promise.all(Array.from({ length: 100 }, (_unused, index) => store.append([note(`${index} a`), note(`${index} b`)], moment(index))));
    assert.deepEqual(textsOf(store.records), Array.from({ length: 100 }, (_unused, index) => [`${index} a`, `${index} b`]).flat());
    assert.deepEqual(keeper.records, [...store.records]);
  });

  it('passes on what the keeper has to tell once, not at every start', async () => {
    const name = freshName();
    const keeper = new FakeCopy('the journal\'s file');
    keeper.told = ['The last line was cut off and set aside.'];
    const store = await openWith({ name, keeper });
    assert.deepEqual(store.status.told, ['The last line was cut off and set aside.']);
    await store.close();
    const again = await openWith({ name, keeper });
    assert.deepEqual(again.status.told, []);
    let changes = 0;
    again.onChange(() => (changes += 1));
    keeper.told = [...keeper.told, 'The disk is full.'];
    await again.append([note('one')], moment());
    await until(() => changes > 0);
    assert.deepEqual(again.status.told, ['The disk is full.']);
  });

  for (let failing = 1; failing <= 6; failing += 1) {
    it(`survives the failure of call number ${failing} on the browser's copy without losing or doubling an entry`, async () => {
      const browser = new FakeCopy('the browser\'s database');
      const keeper = new FakeCopy('the journal\'s file');
      let call = 0;
      for (const method of ['end', 'readAfter', 'append'] as const) {
        const real = browser[method].bind(browser) as (...words: unknown[]) => Promise<never>;
        Object.assign(browser, { [method]: async (...words: unknown[]) => {
          call += 1;
          if (call === failing) throw new CopyFault('broken', 'the n-th call failed');
          return real(...words);
        } });
      }
      const store = await openWith({ name: freshName(), keeper, browser: () => browser });
      for (const text of ['one', 'two', 'three']) await store.append([note(text)], moment());
      await until(() => store.status.kept === 'twice');
      assert.deepEqual(textsOf(browser.records), ['one', 'two', 'three']);
      assert.deepEqual(textsOf(keeper.records), ['one', 'two', 'three']);
    });
  }
});

describe('the fold kept for a fast start', () => {
  it('is given back when it fits the records, and passed over when it does not', async () => {
    const name = freshName();
    const browser = new FakeCopy('the browser\'s database');
    const keeper = new FakeCopy('the journal\'s file');
    const store = await openStore({ name, keeper, browser: () => browser });
    await store.append([note('one')], moment());
    const { foldJournal } = await import('../../core/journal/fold.ts');
    const snapshot = foldJournal(store.records);
    await store.keepSnapshot(snapshot);
    await store.close();
    const again = await openStore({ name, keeper, browser: () => browser });
    assert.deepEqual(again.snapshot, snapshot);
    await again.close();
    const other = journal('another history');
    const elsewhere = await openStore({ name: freshName(), keeper: new FakeCopy('the journal\'s file', other), browser: () => Object.assign(new FakeCopy('the browser\'s database', other), { derived: browser.derived }) });
    assert.isUndefined(elsewhere.snapshot);
    await elsewhere.close();
  });
});
