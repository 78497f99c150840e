import type { Request } from '../../../../core/bench/request.ts';
import { exportBundle } from '../../../../core/journal/bundle.ts';
import { stepsOf } from '../../../../core/respond/views.ts';
import { inches } from '../../talk/benches.ts';
import { found } from '../planned.ts';
import { atTheEndFrame, DEMO_TEXT, Session } from '../session.ts';
import { askByKey, note, type Walked } from './walk.ts';

const TABLE = 'board,species,length,width,thickness\n';

/** What only keys, files and instruments bring: in order and out of it. */
function broughtOtherwise(backup: string): readonly Request[] {
  const board = { number: 1, length: inches(96), width: inches(8), farWidth: inches(8), thickness: inches(2), sapwood: inches(0), species: 'ash', defects: [] };
  return [
    ...['82.55', '+3.2500 in', '15.25 in', '9,99', '0'].map((text): Request => ({ kind: 'reading', text })),
    ...[board, { ...board, length: inches(0) }].map((one): Request => ({ kind: 'put board', board: one })),
    ...[`${TABLE}1,ash,2440,180,50`, `${TABLE}1,ash,96 in,0 in,1 in`, TABLE, 'nothing'].map((text): Request => ({ kind: 'take in boards', text, from: 'boards.csv' })),
    ...[DEMO_TEXT, DEMO_TEXT.replace('"section.leg": {', '"section.leg": ['), '{}'].map((text): Request => ({ kind: 'load piece', text, from: 'a stick' })),
    ...[backup, backup.replace(/"checksum":"./, '"checksum":"x'), '{}'].map((text): Request => ({ kind: 'take in everything', text })),
    { kind: 'answer sense', sense: 'left' },
    { kind: 'note', text: 'the left end has a shake' },
    { kind: 'not understood', heard: 'long rain', because: 'I do not know what “long rain” means', nearest: 'long rail' },
  ];
}

export function askedByKeys(walked: Walked): void {
  const { bench, now } = atTheEndFrame();
  const brought = broughtOtherwise(exportBundle(bench.records, bench.state, now));
  for (const session of [new Session(), Session.withDemo(), atTheEndFrame()]) for (const request of brought) askByKey(session, request, walked);
  const size = Session.withDemo();
  size.say('how wide is leg two');
  for (const request of brought) askByKey(size, request, walked);
}

/** The glue-up of the left end frame from its start to its end, and the same without a word of yes. */
export function gluedUp(walked: Walked): Session {
  const session = atTheEndFrame();
  const tell = (request: Request) => {
    walked.kinds.add(request.kind);
    note(walked, session.request(request), session.bench);
  };
  tell({ kind: 'air', place: 'shop', by: 'said', tempC: 12, humidityPercent: 60 });
  tell({ kind: 'begin gluing', mode: 'rehearsal' });
  for (let moves = 0; moves < 30; moves += 1) tell({ kind: 'next move' });
  tell({ kind: 'begin gluing', mode: 'glue', sure: true });
  for (let moves = 0; moves < 30; moves += 1) {
    session.wait(20_000);
    tell({ kind: 'next move' });
  }
  return session;
}

/** A rack with a plan taken and half of it cut. */
export function plannedAndCut(walked: Walked): Session {
  const session = Session.withDemo();
  const say = (words: string) => { note(walked, { say: session.say(words) }, session.bench); };
  for (let boards = 0; boards < 7; boards += 1) say('new board, one hundred twenty by ten, eight quarter');
  say('knot from thirty to thirty four');
  say('plan the cutting');
  note(walked, { say: found(session) ?? '' }, session.bench);
  say('take the plan');
  for (let cuts = 0; cuts < 12; cuts += 1) for (const words of ['what do I cut next', 'the cut is made']) say(words);
  return session;
}

/** Asked for a size, and for the first reading of a face: at a step of its kind, with all done that comes before. */
export function askedFor(): readonly Session[] {
  const steps = stepsOf(Session.withDemo().bench.state);
  const toRecord = steps.findIndex(({ record }) => record.length > 0);
  const toTrue = steps.findIndex(({ operation }) => operation === 'face');
  return ([[toRecord, 'done'], [toTrue, 'take the readings']] as const).map(([at, words]) => {
    const session = Session.withDemo();
    for (const { id } of steps.slice(0, at)) session.note({ kind: 'step done', step: id });
    session.note({ kind: 'went to step', step: steps[at]?.id ?? '' });
    session.say(words);
    return session;
  });
}

/** A leg that came out heavy, so that sizes have moved. */
export function madeHeavy(): Session {
  const session = Session.withDemo();
  session.say('leg two width is three and three eighths');
  session.say('what moved');
  return session;
}
