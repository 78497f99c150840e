import { sayClockFault, type ClockFault } from '../../../../core/clock/jump.ts';
import { TIMER_KINDS } from '../../../../core/clock/timer.ts';
import { clockCalls } from '../../../../core/respond/announce.ts';
import type { Session } from '../session.ts';
import { note, type Walked } from './walk.ts';

const LOOK_EVERY_MS = 30_000;
const LOOKED_AT_MS = 4 * 3_600_000;
const FAULTS: readonly ClockFault[] = [{ kind: 'restarted' }, { kind: 'restarted', offMs: 3_900_000 }, { kind: 'backwards', byMs: 600_000 }, { kind: 'jumped forward', byMs: 7_200_000 }, { kind: 'gap', ms: 90_000 }];

/** What every kind of clock calls out of its own accord, from its first mark until it has been due for hours; after a power cut; and what is told of clocks that went wrong. */
export function callsOfClocks(session: Session, walked: Walked): void {
  for (const timer of TIMER_KINDS) {
    walked.kinds.add('start timer');
    note(walked, session.request({ kind: 'start timer', timer, name: `leg two ${timer}`, durationMs: 90 * 60_000 }), session.bench);
  }
  const { bench } = session;
  for (let passed = 0; passed < LOOKED_AT_MS; passed += LOOK_EVERY_MS) {
    const before = session.now;
    session.wait(LOOK_EVERY_MS);
    for (const { reply } of clockCalls(bench, before, session.now)) note(walked, reply, bench);
    for (const wallTrusted of [true, false]) {
      const restarted = { ...session.now, bootId: 'second', monotonicMs: 1_000, wallTrusted };
      for (const { reply } of clockCalls(bench, before, restarted)) note(walked, reply, bench);
    }
  }
  for (const fault of FAULTS) note(walked, { say: sayClockFault(fault) }, bench);
}
