import { nanometres } from '../../length/length.ts';
import type { Request } from '../../bench/request.ts';
import type { EdgeName } from '../../journal/edges.ts';
import { planesMeant } from '../edges.ts';
import { rowsOf } from '../pattern.ts';

const row = rowsOf('edges');

/** Chopping and stopping, and the care of edges. */
export const EDGE_ROWS = [
  row('chopping begins', ['[i am] chopping', '[i am] (paring|cutting) [with (the|a) chisel]'], () => ({ kind: 'cutting begins', edge: 'chisel' })),
  row('planing begins', ['i am planing'], (_, bench) => whichEdge(planesMeant(bench))),
  row('an edge begins to cut', ['[i am] (chopping|cutting|planing|paring|working) with (the|a) {edge}', '[the] {edge} is cutting'], ({ edge }) => ({ kind: 'cutting begins', edge })),
  row('cutting stops', ['[i [have]] stopped [chopping|cutting|planing|paring]', 'stop (chopping|cutting|planing|paring)'], () => ({ kind: 'cutting stops' })),
  row('an edge was cared for', ['[i] [have] {care} [it|the edge]', '[i] [have] {care} (the|my) {edge?}', '[i] [have] just {care} [it|(the|my) {edge?}]', '(the|my) {edge?} is {care}'], ({ care, edge }) => ({ kind: 'edge care', care, ...(edge === undefined ? {} : { edge }) })),
  row('how an edge is', ['how is the edge', 'when (must|do|should) i (hone|sharpen)', 'when did i [last] (hone|sharpen) [it]', 'how long [(is it|has it been)] since i [last] (honed|sharpened|stropped) [it]', 'it needs (honing|sharpening)', 'does it need (honing|the strop|sharpening)', 'it is getting (dull|blunt)', '(it|(the|my) {edge?}) is (dull|blunt)', 'is (it|(the|my) {edge?}) [still] sharp [enough]', 'did i (hone|sharpen|strop) [it|(the|my) {edge?}] [today]', '(the|my) {edge?} needs (honing|sharpening)', 'is it time to (hone|sharpen)', '[do] i need to (hone|sharpen)', 'should i (hone|sharpen|strop) [now]', 'how sharp (is it|is the edge)', 'how do i know it is sharp', 'does it want (honing|the strop|sharpening)', 'how (is|sharp is) (the|my) {edge?}', 'does (the|my) {edge?} want (honing|the strop|sharpening)'], ({ edge }) => ({ kind: 'how is the edge', ...(edge === undefined ? {} : { edge }) })),
  row('whether honing pays', ['does honing pay with {duration} left', 'is it worth honing with {duration} left'], ({ duration }) => ({ kind: 'does honing pay', minutesLeft: duration / 60_000 })),
  row('how far a blade stands out', ['how far out for {angle} degrees', '[what is the] projection for {angle} degrees'], ({ angle }) => ({ kind: 'guide projection', angleDegrees: angle })),
  row('the angle of a projection', ['[what] angle [is|at|for] [a] projection [of] {small}'], ({ small }) => ({ kind: 'guide angle', projection: small })),
  row('the roller of the guide', ['the guide roller is {small} across'], ({ small }) => ({ kind: 'set', setting: { guideRoller: nanometres(Math.round(small / 2)) } })),
  row('the axle of the guide', ['the guide axle is {small} (below|under) the blade'], ({ small }) => ({ kind: 'set', setting: { guideAxis: small } })),
];

function whichEdge(edges: readonly EdgeName[]): Request {
  const choices = edges.map((edge) => ({ say: edge, request: { kind: 'cutting begins', edge } as const }));
  const [only, other] = choices;
  return only && !other ? only.request : { kind: 'which', choices };
}
