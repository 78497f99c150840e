import type { Bench } from '../bench/bench.ts';
import type { Response } from '../bench/reply.ts';
import { sayDuration } from '../clock/sayDuration.ts';
import type { Moment } from '../clock/moment.ts';
import { clampsFor, gramsFor, MPA_PER_PSI, PRESSURE_PSI, squareInches, usualForce, type GlueLine } from '../glue/clamping.ts';
import { sayDegrees } from '../glue/telling.ts';
import { warmBoard, warmBottle } from '../glue/warming.ts';
import { nanometres, NANOMETRES_PER_INCH, type Length } from '../length/length.ts';
import { sayNumber } from '../length/sayNumber.ts';
import type { State } from '../journal/state.ts';
import { sizeOf } from '../piece/evaluate.ts';
import type { Part } from '../piece/file.ts';
import { currentStep } from '../work/progress.ts';
import { densityOf, speciesCalled } from '../wood/species.ts';
import { adhesiveOf, eveningOf } from './evening.ts';
import { refuse, tell } from './plain.ts';
import { sayCount, sentence, spoken } from './saying.ts';
import { toSay } from './toSay.ts';
import { sizesOf, stepsOf } from './views.ts';

/** The glue lines of a part that is glued up from boards or layers; undefined for any other. */
export function glueLinesOf(state: State, part: Part): { readonly line: GlueLine; readonly lines: number } | undefined {
  const sizes = sizesOf(state);
  const size = (name: string): Length | undefined => (sizes ? sizeOf(sizes, `${part.id}.${name}`)?.length : undefined);
  const [length, width, thickness] = [size('length'), size('width'), size('thickness')];
  if (length === undefined || width === undefined || thickness === undefined) return undefined;
  if (part.made.kind === 'panel') return { line: { length, width: thickness, behind: nanometres(Math.round(width / part.made.boards)) }, lines: part.made.boards - 1 };
  // A stack is pressed through cauls as thick as an inch and through its outer layer.
  if (part.made.kind === 'laminated') return { line: { length, width, behind: nanometres(NANOMETRES_PER_INCH + Math.round(thickness / part.made.layers)) }, lines: part.made.layers - 1 };
  return undefined;
}

/** How many clamps the glue-up of this step wants, against those owned; and how much glue. */
export function clampsForStep({ state }: Bench): Response {
  const step = state.piece ? currentStep(stepsOf(state), state) : undefined;
  const part = state.piece?.file.parts.find(({ id }) => id === step?.part);
  const found = part && glueLinesOf(state, part);
  if (!state.piece || !part || !found) return refuse('Clamps are reckoned for boards and layers that are glued up. At a frame, one clamp or pair goes across each rail, in line with its tenon.');
  const { glue } = adhesiveOf(state);
  const psi = glue.pressure === 'by density' ? PRESSURE_PSI[densityOf(speciesCalled(part.species)?.gravity ?? 0.6)] : glue.pressure === 'contact' ? [5, 15] as const : [glue.pressure.fromMpa / MPA_PER_PSI, glue.pressure.toMpa / MPA_PER_PSI] as const;
  const owned = state.piece.file.tools.clamps;
  const { clampLbf } = state.settings;
  const force = clampLbf ?? Math.max(...(owned.length === 0 ? [''] : owned.map(({ kind }) => kind)).map(usualForce));
  const because = clampLbf === undefined ? `What a clamp presses is common practice, no source: if you know yours, ${toSay('tell me how many pounds they press.', 'say, for one: my clamps press eight hundred pounds.')}` : `Reckoned with the ${sayNumber(clampLbf)} pounds that you said of yours.`;
  const wanted = clampsFor(found.line, psi, force);
  if (!wanted.ok) return refuse('The sizes of this glue line are not known yet.');
  const { value } = wanted;
  const have = owned.reduce((sum, { count }) => sum + count, 0);
  const [, most] = gramsFor(squareInches(found.line.length, found.line.width) * found.lines, glue.spreadGm2);
  const short = have < value.wanted ? ` You have ${sayNumber(have)}: glue it in parts, or use stiff cauls and fewer clamps, each pressing more.` : ` You have ${sayNumber(have)}.`;
  return tell({
    say: `${sentence(`${sayCount(value.wanted, 'clamp', 'clamps')}, ${spoken(state, value.spacing)} apart, the first half of that from the end`)}${short} About ${sayNumber(Math.ceil(most / 5) * 5)} grams of glue. ${because}`,
    screen: { name: 'reckoning', result: { question: `clamps for ${part.name}: ${value.wanted} wanted, ${have} owned`, answers: [{ label: 'apart', length: value.spacing }, { label: 'first from the end', length: nanometres(Math.round(value.spacing / 2)) }],
      note: `${Math.round(value.totalLbf)} lbf on each glue line, ${psi.map((one) => Math.round(one)).join(' to ')} psi` } },
    lengths: [value.spacing],
  });
}

const HOUSE_C = 20;
const BOTTLE = nanometres(3 * NANOMETRES_PER_INCH);

/** How long to bring wood and glue inside, before they may be glued. An estimate, and said to be one. */
export function howLongToWarm({ state }: Bench, now: Moment): Response {
  const evening = eveningOf(state, now);
  if (!evening) return refuse(`I do not know how cold the shop is. ${toSay('Tell me its degrees.', 'Say, for one: the shop is five degrees.')}`, { screen: { name: 'air' } });
  const { label } = adhesiveOf(state);
  const step = state.piece ? currentStep(stepsOf(state), state) : undefined;
  const parts = state.piece?.file.parts.filter(({ id }) => step?.covers.some(({ part }) => part === id) ?? false) ?? [];
  const thickest = parts.flatMap((part) => thicknessOf(state, part)).sort((a, b) => b.thickness - a.thickness)[0];
  const [toC, roomC] = [label.lowestC + 2, HOUSE_C];
  const wood = thickest && warmBoard({ ...thickest, fromC: evening.woodC ?? evening.air.tempC, toC, roomC });
  const glue = warmBottle({ diameter: BOTTLE, fromC: evening.glueC ?? evening.air.tempC, toC, roomC });
  if (!glue.ok || wood?.ok === false) return refuse(`This glue asks for a warmer room than ${sayDegrees(roomC, 'celsius')}.`);
  const minutes = (count: number): string => sayDuration(Math.max(5, Math.ceil(count / 5) * 5) * 60_000);
  const ofWood = wood ? `the wood about ${minutes(wood.value.minutes)}, stickered; ` : '';
  return tell({ say: `In a room of ${sayDegrees(roomC, state.settings.temperature)}, to reach ${sayDegrees(toC, state.settings.temperature)}: ${ofWood}a bottle of glue about ${minutes(glue.value.minutes)}. That is an estimate: put a thermometer to them.`, screen: { name: 'air' } });
}

function thicknessOf(state: State, part: Part): readonly { readonly thickness: Length; readonly gravity: number }[] {
  const sizes = sizesOf(state);
  const name = part.made.kind === 'laminated' ? `${part.id}.layerThickness` : `${part.id}.thickness`;
  const thickness = sizes && (sizeOf(sizes, name) ?? sizeOf(sizes, `${part.id}.thickness`))?.length;
  return thickness ? [{ thickness, gravity: speciesCalled(part.species)?.gravity ?? 0.6 }] : [];
}
