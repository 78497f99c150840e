import type { Bench } from '../bench/bench.ts';
import type { Response } from '../bench/reply.ts';
import type { FaceRequest } from '../bench/request.ts';
import { planArches, type Arch, type ArchPlan } from '../faces/boards.ts';
import { placeKey } from '../journal/progress.ts';
import { sayNumber } from '../length/sayNumber.ts';
import type { Part } from '../piece/file.ts';
import { refuse, tell, write } from './plain.ts';
import { sayList, sentence } from './saying.ts';

type Asked = Extract<FaceRequest, { kind: 'like board' | 'board arches' }>;
type Panel = Part & { readonly made: { readonly kind: 'panel'; readonly boards: number } };

/** Which way the boards of a glued-up panel arch. */
export function respondToBoards(bench: Bench, request: Asked): Response {
  const panels = (bench.state.piece?.file.parts ?? []).filter((part): part is Panel => part.made.kind === 'panel');
  const named = panels.filter(({ id }) => id === request.part);
  const [panel, ...more] = named.length > 0 ? named : panels;
  if (!panel) return refuse('This piece has no panel of boards.');
  if (more.length > 0) {
    const choices = [panel, ...more].map(({ id, name }) => ({ say: name, request: { ...request, part: id } }));
    return tell({ say: `Which panel: ${sayList(choices.map(({ say }) => say), 'or')}?`, question: { kind: 'which', choices } });
  }
  return request.kind === 'like board' ? likeBoard(bench, panel, request.board, request.arch) : tell({ say: sayPlan(bench, panel), note: sayPlan(bench, panel) });
}

function likeBoard(bench: Bench, panel: Panel, board: number, arch: Arch | 'either'): Response {
  if (board < 1 || board > panel.made.boards) return refuse(`The ${panel.name} has ${sayNumber(panel.made.boards)} boards; there is no board ${sayNumber(board)}.`);
  const arches = new Map(bench.state.arches);
  const key = placeKey(panel.id, board);
  if (arch === 'either') arches.delete(key);
  else arches.set(key, arch);
  const say = sayPlan({ ...bench, state: { ...bench.state, arches } }, panel);
  return write([{ kind: 'board liked', part: panel.id, board, arch }], { say, note: say, signal: 'done' });
}

function planOf({ state }: Bench, { id, made }: Panel): ArchPlan {
  const told = Array.from({ length: made.boards }, (_, index) => index + 1).flatMap((board) => {
    const arch = state.arches.get(placeKey(id, board));
    return arch === undefined ? [] : [[board, arch] as const];
  });
  return planArches(made.boards, new Map(told));
}

function sayPlan(bench: Bench, panel: Panel): string {
  const { arches, alike } = planOf(bench, panel);
  const told = arches.map((arch, index) => `board ${sayNumber(index + 1)} ${arch}`);
  const same = alike.length === 0 ? 'They go by turns, one up, one down.' : sentence(`${sayList(alike.map((board) => `board ${sayNumber(board)}`))} ${alike.length === 1 ? 'arches as its neighbour does' : 'arch as their neighbours do'}, because you want ${alike.length === 1 ? 'it' : 'them'} so`);
  return `${sentence(`${panel.name}, growth rings seen on the end, from the front edge: ${sayList(told)}`)} ${same}`;
}
