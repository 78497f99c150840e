import { assert } from '@open-wc/testing';
import type { Bench } from '../../../core/bench/bench.ts';
import type { Moment } from '../../../core/clock/moment.ts';
import type { Entry, JournalRecord } from '../../../core/journal/entry.ts';
import { makeRecords } from '../../../core/journal/record.ts';
import { benchFrom } from '../../../core/respond/advance.ts';
import { AirWatch } from '../../../kiosk/host/airWatch.ts';
import { moment } from '../storeHelp.ts';

const MINUTE_MS = 60_000;

/** A watch over sensors that say what the test says, and the journal it writes. */
function watching() {
  const shop = { minutes: 0, sensors: [] as unknown, answers: true };
  const notices: string[] = [];
  let bench: Bench = benchFrom([]);
  let records: readonly JournalRecord[] = [];
  const now = (): Moment => moment(shop.minutes * MINUTE_MS);
  const note = (entries: readonly Entry[]): Promise<void> => {
    records = [...records, ...makeRecords(entries, records.at(-1) ?? null, now())];
    bench = benchFrom(records);
    return Promise.resolve();
  };
  const watch = new AirWatch({
    keeper: { get bench() { return bench; }, note }, now, notice: (sentence) => notices.push(sentence),
    ask: () => (shop.answers ? Promise.resolve({ nowMs: shop.minutes * MINUTE_MS, sensors: shop.sensors }) : Promise.reject(new Error('no server'))),
  });
  const read = (tempC: number, humidityPercent: number) => (shop.sensors = [{ sensor: 'shop air', tempC, humidityPercent, atMs: shop.minutes * MINUTE_MS }]);
  return { shop, notices, watch, read, note, written: () => records.map(({ entry }) => entry) };
}

describe('the shop’s sensor', () => {
  it('is written down once, and again when it has changed so much that it matters', async () => {
    const { shop, watch, read, written } = watching();
    read(5, 80);
    await watch.look();
    shop.minutes = 5;
    read(5.2, 81);
    await watch.look();
    assert.deepEqual(written(), [{ kind: 'air told', place: 'shop', by: 'sensor', tempC: 5, humidityPercent: 80 }]);
    read(8, 70);
    await watch.look();
    assert.equal(written().length, 2);
  });

  it('does not overrule for an hour what the maker said', async () => {
    const { shop, watch, read, note, written } = watching();
    await note([{ kind: 'air told', place: 'shop', by: 'said', tempC: 12 }]);
    read(5, 80);
    await watch.look();
    assert.equal(written().length, 1);
    shop.minutes = 61;
    read(5, 80);
    await watch.look();
    assert.equal(written().length, 2);
  });

  it('that has a fault is told, and an old reading is not taken for this evening’s', async () => {
    const { shop, watch, notices, written } = watching();
    shop.minutes = 60;
    shop.sensors = [{ sensor: 'a', tempC: 12, atMs: 0 }, { sensor: 'b', atMs: 0, fault: 'b: it does not answer. Look at its wires.' }];
    await watch.look();
    assert.deepEqual(written(), []);
    assert.deepEqual(notices, ['The shop’s sensor b: it does not answer. Look at its wires.']);
  });

  it('is missed by nobody while the server is away, or says what no server says', async () => {
    const { shop, watch, written } = watching();
    shop.answers = false;
    await watch.look();
    shop.answers = true;
    shop.sensors = 'rubbish';
    await watch.look();
    assert.deepEqual(written(), []);
  });
});
