import { assert } from '@open-wc/testing';
import { checksumOf } from '../../core/journal/checksum.ts';
import type { JournalRecord } from '../../core/journal/entry.ts';
import { openDatabase, type Form } from '../../kiosk/store/database.ts';
import { freshName, moment } from './storeHelp.ts';

const events = { onTerminated: () => undefined, onOutdated: () => undefined };
const FIRST: Form = { present: 1, migrations: [] };
const SECOND: Form = { present: 2, migrations: [{ to: 2, why: 'words are called text', entry: ({ words, ...rest }) => ({ ...rest, text: words }) }] };

async function writeOld(name: string, entry: object): Promise<JournalRecord> {
  const open = { number: 1, act: 1, at: moment(), entry, before: '' };
  const record = { ...open, checksum: checksumOf(open as never) } as unknown as JournalRecord;
  const { database } = await openDatabase(name, events, FIRST);
  await database.strictly((transaction) => transaction.objectStore('records').add(record));
  database.close();
  return record;
}

describe('a journal of an older form in the browser\'s database', () => {
  it('is brought up when it is opened, and its old records are kept aside', async () => {
    const name = freshName();
    const old = await writeOld(name, { kind: 'noted', words: 'the older form said words' });
    const { database, fresh } = await openDatabase(name, events, SECOND);
    assert.isFalse(fresh);
    const records = await database.read((transaction) => transaction.objectStore('records').getAll());
    assert.deepEqual(records.map(({ entry }) => entry), [{ kind: 'noted', text: 'the older form said words' }]);
    const aside = await database.read((transaction) => transaction.objectStore('aside').getAll());
    assert.deepEqual(aside[0]?.values, [old]);
    database.close();
  });

  it('stays as it was when it cannot be brought up', async () => {
    const name = freshName();
    const old = await writeOld(name, { kind: 'never heard of' });
    let refused = false;
    await openDatabase(name, events, SECOND).catch(() => (refused = true));
    assert.isTrue(refused);
    const { database } = await openDatabase(name, events, FIRST);
    assert.deepEqual(await database.read((transaction) => transaction.objectStore('records').getAll()), [old]);
    database.close();
  });

  it('of a newer form is refused by an older bench', async () => {
    const name = freshName();
    (await openDatabase(name, events, SECOND)).database.close();
    const fault = await openDatabase(name, events, FIRST).then(() => undefined, (error: unknown) => error as DOMException);
    assert.equal(fault?.name, 'VersionError');
  });
});
