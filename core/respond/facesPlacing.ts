import type { Bench } from '../bench/bench.ts';
import type { Response } from '../bench/reply.ts';
import type { FaceRequest } from '../bench/request.ts';
import type { Arrangement, Found } from '../faces/assign.ts';
import { USUAL_ORDER } from '../faces/assign.ts';
import { sameTurn } from '../faces/face.ts';
import { nameCopies, sayChange, sayLoss, sayPlaced } from '../faces/explain.ts';
import { LEVEL_WORDS, putBefore } from '../faces/levels.ts';
import { facedPart, facesAbout, foundFor, standsNow, type FacedPart } from './facesState.ts';
import { sayUndone, undoneBy } from './facesUndo.ts';
import { refuse, tell, write } from './plain.ts';
import { sayList, sentence } from './saying.ts';
import { toSay } from './toSay.ts';

/** The part that is meant, or the question which, or why it cannot be placed. */
export function withPart(bench: Bench, named: string | undefined, ask: (part: string) => FaceRequest, then: (faced: FacedPart) => Response): Response {
  const [part, ...more] = facesAbout(bench, named);
  if (!part) return refuse(named === undefined ? 'No part of this piece has places by which its faces could be chosen.' : 'This piece has no such part.');
  if (more.length > 0) {
    const choices = [part, ...more].map(({ id, name }) => ({ say: name, request: ask(id) }));
    return tell({ say: `Which part: ${sayList(choices.map(({ say }) => say), 'or')}?`, question: { kind: 'which', choices } });
  }
  const faced = facedPart(bench.state, part);
  return faced.ok ? then(faced.value) : refuse(sentence(faced.fault));
}

/** Where they go by what was told of them: proposed, shown and said; written down only by 'take it'. */
export function placeThem(bench: Bench, named: string | undefined): Response {
  return withPart(bench, named, (part) => ({ kind: 'place them', part }), (faced) => {
    const found = foundFor(bench.state, faced);
    const note = tiesOf(faced, found);
    const stands = sameLegs(standsNow(faced), found.best) ? 'They stand so already.' : 'Say the words take it, or ask for the second best.';
    return tell({ say: [sayLegs(faced, found.best), note, stands].filter(Boolean).join(' '), note, screen: { name: 'faces', part: faced.part.id, shows: 'best' } });
  });
}

function sayLegs({ names, problem: { stand } }: FacedPart, { legs }: Arrangement): string {
  return sentence(legs.map((leg) => sayPlaced(names, leg, stand.kind)).join('; '));
}

/** What is as good: said, for then the maker chooses by eye. */
function tiesOf({ names, problem }: FacedPart, { best, asGood, second, mayTurn }: Found): string {
  if (second === undefined && asGood !== undefined) {
    const nothing = problem.likes.every(({ faces, arch }) => Object.keys(faces).length === 0 && arch === undefined);
    return nothing ? `Nothing was told of the ${names.many} yet, so any way is as good. ${toSay(`Tell me of each ${names.one} which faces to show and which to hide.`, `Tell, for one: ${names.one} one show ${problem.stand.kind === 'upright' ? 'A and B' : 'A'}.`)}` : 'By what was told, any way is as good.';
  }
  const turned = mayTurn.length === 0 ? '' : sentence(`${nameCopies(names, mayTurn)} may be turned in ${mayTurn.length === 1 ? 'its place' : 'their places'} without loss`);
  return [asGood === undefined ? '' : sentence(`as good with ${sayChange(names, best, asGood)}`), turned].filter(Boolean).join(' ');
}

/** The runner-up, and why it lost. */
export function secondBest(bench: Bench, named: string | undefined): Response {
  return withPart(bench, named, (part) => ({ kind: 'second best', part }), (faced) => {
    const found = foundFor(bench.state, faced);
    if (found.second === undefined) return refuse('There is no second best: by what was told, every way is as good.');
    const say = sayRunnerUp(faced, found, found.second);
    return tell({ say, note: say, screen: { name: 'faces', part: faced.part.id, shows: 'second' } });
  });
}

function sayRunnerUp({ names, problem: { order } }: FacedPart, { best }: Found, second: Arrangement): string {
  return sentence(`second best: ${sayChange(names, best, second)}; ${sayLoss(names, order, best, second)}`);
}

/** What is on the screen is written down: all copies in one act. */
export function takePlacing(bench: Bench, request: Extract<FaceRequest, { kind: 'take placing' }>): Response {
  const { screen } = bench.conversation;
  if (screen.name !== 'faces' || screen.shows === undefined) return refuse(`Nothing is proposed on the screen. ${toSay('Have me place them first.', 'Say: place them.')}`);
  return withPart(bench, request.part ?? screen.part, (part) => ({ kind: 'take placing', part }), (faced) => {
    const found = foundFor(bench.state, faced);
    const chosen = screen.shows === 'second' ? found.second : found.best;
    if (chosen === undefined) return refuse('There is no second best to take.');
    const shown = { name: 'faces', part: faced.part.id } as const;
    if (sameLegs(standsNow(faced), chosen)) return tell({ say: 'They stand so already.', screen: shown });
    const undone = undoneBy(bench.state, faced, chosen.legs);
    if (undone.length > 0 && request.sure !== true) {
      const say = `${sayUndone(faced, undone)} Take it all the same?`;
      return tell({ say, note: say, signal: 'wrong', question: { kind: 'yes or no', onYes: { ...request, sure: true } } });
    }
    const legs = [...chosen.legs].sort((one, other) => one.copy - other.copy).map(({ copy, place, turn }) => ({ copy, place: place.name, turn }));
    return write([{ kind: 'legs assigned', part: faced.part.id, legs }], { say: sentence(`written down: ${chosen.legs.map((leg) => sayPlaced(faced.names, leg, faced.problem.stand.kind)).join('; ')}`), signal: 'done', screen: shown });
  });
}

function sameLegs(one: Arrangement | undefined, other: Arrangement): boolean {
  return one !== undefined && one.legs.every((leg, index) => leg.copy === other.legs[index]?.copy && sameTurn(leg.turn, other.legs[index].turn));
}

/** What counts first when they are placed, in words; and a change of it. */
export function whatCounts(bench: Bench, request: Extract<FaceRequest, { kind: 'what counts' }>): Response {
  return withPart(bench, request.part, (part) => ({ ...request, part }), ({ part, problem: { order } }) => {
    const { change } = request;
    if (change === undefined) return tell({ say: sayOrder(order), note: sayOrder(order), screen: { name: 'faces', part: part.id } });
    const changed = change === 'usual' ? USUAL_ORDER : putBefore(order, change.level, change.before === change.level ? undefined : change.before);
    if (changed.join() === order.join()) return tell({ say: `It is so already. ${sayOrder(order)}`, screen: { name: 'faces', part: part.id } });
    return write([{ kind: 'faces ordered', part: part.id, order: changed }], { say: sayOrder(changed), note: sayOrder(changed), signal: 'done', screen: { name: 'faces', part: part.id, ...proposing(bench) } });
  });
}

/** A proposal on the screen stays one, worked out anew. */
function proposing({ conversation: { screen } }: Bench): { readonly shows?: 'best' } {
  return screen.name === 'faces' && screen.shows !== undefined ? { shows: 'best' } : {};
}

function sayOrder(order: FacedPart['problem']['order']): string {
  return sentence(`what counts, first to last: ${order.map((level) => LEVEL_WORDS[level]).join('; ')}`);
}
