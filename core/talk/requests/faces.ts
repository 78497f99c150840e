import type { Bench } from '../../bench/bench.ts';
import { lastPart } from '../context.ts';
import { rowsOf } from '../pattern.ts';
import type { Built } from '../slot.ts';

const row = rowsOf('faces');

/** The copy that was last spoken of, without saying its name again. */
function shown(bench: Bench, build: (of: { readonly part: string; readonly copy: number }) => Built): Built {
  const last = lastPart(bench);
  const part = bench.state.piece?.file.parts.find(({ id }) => id === last?.owner);
  return part === undefined || last?.copy === undefined ? { fault: 'which one is meant is missing; say, for one, leg two first', notNow: true } : build({ part: part.id, copy: last.copy });
}

/** Which faces are liked, and where the copies go by them. */
export const FACE_ROWS = [
  row('faces to show and to hide', ['[the] {copy} {likings}'], ({ copy, likings }) => ({ kind: 'like faces', ...copy, likings })),
  row('faces to show and to hide, of the one on the screen', ['{likings}'], ({ likings }, bench) => shown(bench, (of) => ({ kind: 'like faces', ...of, likings }))),
  row('what a face is', ['[the] {copy} [face|faces] {faces} (is|are|has|have) [the] {quality}', 'the best face of [the] {copy} is [face] {faces}'],
    ({ copy, faces, quality = 'best' }) => ({ kind: 'like faces', ...copy, likings: [{ faces, as: quality }] })),
  row('what a face is, of the one on the screen', ['(face|faces) {faces} (is|are|has|have) [the] {quality}'], ({ faces, quality }, bench) => shown(bench, (of) => ({ kind: 'like faces', ...of, likings: [{ faces, as: quality }] }))),
  row('which end is up', ['[the] {copy} grain up', '[the] numbered end of [the] {copy} is up'], ({ copy }) => ({ kind: 'like end', ...copy, what: 'up', end: 'numbered' })),
  row('which end is up', ['[the] {copy} grain down', '[the] numbered end of [the] {copy} is down'], ({ copy }) => ({ kind: 'like end', ...copy, what: 'up', end: 'other' })),
  row('either end may be up', ['[the] {copy} either end [up]'], ({ copy }) => ({ kind: 'like end', ...copy, what: 'up', end: 'either' })),
  row('which way the arches point', ['[the] {copy} (arch|arches) up'], ({ copy }) => ({ kind: 'like end', ...copy, what: 'arch', end: 'numbered' })),
  row('which way the arches point', ['[the] {copy} (arch|arches) down'], ({ copy }) => ({ kind: 'like end', ...copy, what: 'arch', end: 'other' })),
  row('there are no arches', ['[the] {copy} no (arch|arches)'], ({ copy }) => ({ kind: 'like end', ...copy, what: 'arch', end: 'either' })),
  row('grain up, of the one on the screen', ['grain up'], (_, bench) => shown(bench, (of) => ({ kind: 'like end', ...of, what: 'up', end: 'numbered' }))),
  row('grain down, of the one on the screen', ['grain down'], (_, bench) => shown(bench, (of) => ({ kind: 'like end', ...of, what: 'up', end: 'other' }))),
  row('arches up, of the one on the screen', ['(arch|arches) up'], (_, bench) => shown(bench, (of) => ({ kind: 'like end', ...of, what: 'arch', end: 'numbered' }))),
  row('arches down, of the one on the screen', ['(arch|arches) down'], (_, bench) => shown(bench, (of) => ({ kind: 'like end', ...of, what: 'arch', end: 'other' }))),
  row('the faces of one', ['[what are|show] [me] the faces of [the] {copy}', 'which way does [the] {copy} face', 'how does [the] {copy} stand', 'where (does [the] {copy} go|is [the] {copy})', 'which face of [the] {copy} is best', '[show [me]] the map of [the] {copy}', 'which way up is [the] {copy}', 'which one is [the] {copy}'], ({ copy }) => ({ kind: 'faces of', ...copy })),
  row('the faces of the one at hand', ['which (face|side|end) is (up|out|best)', 'where does (it|this [one]) go', 'which way up is (it|this)', 'which way does the grain (go|run)', 'which way is the grain'], (_, bench) => shown(bench, (of) => ({ kind: 'faces of', ...of }))),
  row('place them by their faces', ['place them', 'which goes where', 'where do they go'], () => ({ kind: 'place them' })),
  row('place a part by its faces', ['place [the] {parts}', 'which {parts} goes where', 'where should [the] {parts} go'], ({ parts: { part } }) => ({ kind: 'place them', part })),
  row('which copy is which', ['which (is|one is) which', 'how do i tell them apart'], () => ({ kind: 'which is which' })),
  row('which copy of a part is which', ['which {parts} is which', 'which is which of [the] {parts}', 'how do i tell [the] {parts} apart'], ({ parts: { part } }) => ({ kind: 'which is which', part })),
  row('the second best placing', ['[what is] [the] second best [and why]', 'why not another way'], () => ({ kind: 'second best' })),
  row('two copies change places', ['(swap|change over) [the] {copy} (and|with|for) [the] {other}', 'change [the] {copy} and [the] {other} over', '[the] {copy} and [the] {other} change (over|places)', '[the] {copy} changes (over|places) with [the] {other}'],
    ({ copy, other }) => (copy.part === other.part ? { kind: 'change over', ...copy, with: other.copy } : { fault: 'only two of one part change over' })),
  row('two copies change places, the name said once', ['(swap|change over) [the] {copy} and {nth}', 'change [the] {copy} and {nth} over', '[the] {copy} and {nth} change (over|places)'], ({ copy, nth }) => ({ kind: 'change over', ...copy, with: nth })),
  row('take what is proposed', ['take it', 'take this [one]', 'so be it'], () => ({ kind: 'take placing' })),
  row('what counts first', ['what counts [first]', 'what comes first'], () => ({ kind: 'what counts' })),
  row('put first what counts', ['[put] {level} first', '{level} (count|counts|matter|matters) most'], ({ level }) => ({ kind: 'what counts', change: { level } })),
  row('put one before another', ['[put] {level} before {before}'], ({ level, before }) => ({ kind: 'what counts', change: { level, before } })),
  row('the usual order of what counts', ['[in] the usual order'], () => ({ kind: 'what counts', change: 'usual' })),
  row('where a copy goes, and how', ['[the] {copy} (is|goes|stands) [at|in] [the] {place} [with] face {face} [(to the|in) front|outside|out]', 'put [the] {copy} [at|in] [the] {place} [with] face {face} [(to the|in) front|outside|out]'],
    ({ copy, place, face }) => ({ kind: 'place', ...copy, place, front: face })),
  row('where a copy goes, and how, upside down', ['[the] {copy} (is|goes|stands) [at|in] [the] {place} [with] face {face} [to the front] upside down'],
    ({ copy, place, face }) => ({ kind: 'place', ...copy, place, front: face, up: 'other' })),
  row('a board arches up', ['board {board} (arch|arches) up'], ({ board }) => ({ kind: 'like board', board, arch: 'up' })),
  row('a board arches down', ['board {board} (arch|arches) down'], ({ board }) => ({ kind: 'like board', board, arch: 'down' })),
  row('a board may arch either way', ['board {board} either way'], ({ board }) => ({ kind: 'like board', board, arch: 'either' })),
  row('which way the boards arch', ['which way do the boards (arch|go)', '[the] arches of the boards'], () => ({ kind: 'board arches' })),
  row('which way up the copies of a part go', ['which way [up|round] (do|does) [the] {parts} (go|stand)'], ({ parts: { part } }) => ({ kind: 'which is which', part })),
];
