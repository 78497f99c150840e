import { nanometres } from '../../length/length.ts';
import { rowsOf } from '../pattern.ts';

const row = rowsOf('edges');

/** Chopping and stopping, and the care of edges. */
export const EDGE_ROWS = [
  row('chopping begins', ['[i am] chopping', '[i am] (paring|cutting) [with (the|a) chisel]'], () => ({ kind: 'cutting begins', edge: 'chisel' })),
  row('an edge begins to cut', ['[i am] (chopping|cutting|planing|paring|working) with (the|a) {edge}', '[the] {edge} is cutting'], ({ edge }) => ({ kind: 'cutting begins', edge })),
  row('cutting stops', ['[i have] stopped [chopping|cutting|planing|paring]', 'stop (chopping|cutting|planing|paring)'], () => ({ kind: 'cutting stops' })),
  row('an edge was cared for', ['[i] [have] {care} [it|the edge]', '[i] [have] {care} (the|my) {edge?}', '[i] [have] just {care} [it|(the|my) {edge?}]', '(the|my) {edge?} is {care}'], ({ care, edge }) => ({ kind: 'edge care', care, ...(edge === undefined ? {} : { edge }) })),
  row('how an edge is', ['how is the edge', 'when (must|do) i (hone|sharpen)', 'is it time to (hone|sharpen)', 'how sharp (is it|is the edge)', 'does it want (honing|the strop|sharpening)', 'how (is|sharp is) (the|my) {edge?}', 'does (the|my) {edge?} want (honing|the strop|sharpening)'], ({ edge }) => ({ kind: 'how is the edge', ...(edge === undefined ? {} : { edge }) })),
  row('whether honing pays', ['does honing pay with {duration} left', 'is it worth honing with {duration} left'], ({ duration }) => ({ kind: 'does honing pay', minutesLeft: duration / 60_000 })),
  row('how far a blade stands out', ['how far out for {angle} degrees', '[what is the] projection for {angle} degrees'], ({ angle }) => ({ kind: 'guide projection', angleDegrees: angle })),
  row('the angle of a projection', ['[what] angle [is|at|for] [a] projection [of] {small}'], ({ small }) => ({ kind: 'guide angle', projection: small })),
  row('the roller of the guide', ['the guide roller is {small} across'], ({ small }) => ({ kind: 'set', setting: { guideRoller: nanometres(Math.round(small / 2)) } })),
  row('the axle of the guide', ['the guide axle is {small} (below|under) the blade'], ({ small }) => ({ kind: 'set', setting: { guideAxis: small } })),
];
