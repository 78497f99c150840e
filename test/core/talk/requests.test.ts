import { describe, expect, it } from 'vitest';
import type { Request } from '../../../core/bench/request.ts';
import { nanometres } from '../../../core/length/length.ts';
import { parseRequest } from '../../../core/talk/parse.ts';
import { bench, inches } from './benches.ts';

const ON_A_SIZE = bench({ screen: { name: 'size', size: 'longRail.shoulders' }, state: { measurements: [{ size: 'leg.width', copy: 2, length: inches(3.25) }] } });
const LONG_RAIL = { size: 'longRail.length' };
const minutes = (count: number): number => count * 60_000;

/** What a maker says, and the request it makes: each line another request. */
const SAID: Record<string, readonly (readonly [string, Request])[]> = {
  'walking through the work': [
    ['where am I?', { kind: 'where am I' }],
    ['next', { kind: 'next step' }],
    ['go back', { kind: 'step back' }],
    ["that's done", { kind: 'step done' }],
    ['skip this step', { kind: 'skip step' }],
    ['not done yet', { kind: 'reopen step' }],
    ['go to face leg three', { kind: 'go to step', step: 'face/leg/3' }],
    ['what is left to do', { kind: 'what is left' }],
    ['tell me more', { kind: 'tell the step', what: 'in full' }],
    ['what tools do I need', { kind: 'tell the step', what: 'tools' }],
    ['what is the check', { kind: 'tell the step', what: 'check' }],
    ['is it safe', { kind: 'tell the step', what: 'cautions' }],
    ['what sizes', { kind: 'tell the step', what: 'sizes' }],
    ['what do I record', { kind: 'tell the step', what: 'what to record' }],
    ['leg three is front left', { kind: 'place', part: 'leg', copy: 3, place: 'front left' }],
  ],
  faces: [
    ['leg two show A and B, hide C', { kind: 'like faces', part: 'leg', copy: 2, likings: [{ faces: ['A', 'B'], as: 'show' }, { faces: ['C'], as: 'hide' }] }],
    ['leg three face A is the best', { kind: 'like faces', part: 'leg', copy: 3, likings: [{ faces: ['A'], as: 'best' }] }],
    ['leg one show alpha hide charlie and delta', { kind: 'like faces', part: 'leg', copy: 1, likings: [{ faces: ['A'], as: 'show' }, { faces: ['C', 'D'], as: 'hide' }] }],
    ['leg one faces B and D have straight grain', { kind: 'like faces', part: 'leg', copy: 1, likings: [{ faces: ['B', 'D'], as: 'straight' }] }],
    ['leg four arch up', { kind: 'like end', part: 'leg', copy: 4, what: 'arch', end: 'numbered' }],
    ['leg four grain down', { kind: 'like end', part: 'leg', copy: 4, what: 'up', end: 'other' }],
    ['leg four either end', { kind: 'like end', part: 'leg', copy: 4, what: 'up', end: 'either' }],
    ['what are the faces of leg two', { kind: 'faces of', part: 'leg', copy: 2 }],
    ['place the long rails', { kind: 'place them', part: 'longRail' }],
    ['place them', { kind: 'place them' }],
    ['second best and why', { kind: 'second best' }],
    ['take it', { kind: 'take placing' }],
    ['what counts first', { kind: 'what counts' }],
    ['pairs first', { kind: 'what counts', change: { level: 'pairs' } }],
    ['put arches before best faces', { kind: 'what counts', change: { level: 'arches', before: 'best' } }],
    ['the usual order', { kind: 'what counts', change: 'usual' }],
    ['leg two goes back left, face A to the front', { kind: 'place', part: 'leg', copy: 2, place: 'back left', front: 'A' }],
    ['leg two goes back left with face B to the front upside down', { kind: 'place', part: 'leg', copy: 2, place: 'back left', front: 'B', up: 'other' }],
    ['board three arch up', { kind: 'like board', board: 3, arch: 'up' }],
    ['which way do the boards go', { kind: 'board arches' }],
    ['show the corners', { kind: 'show', screen: { name: 'faces' } }],
  ],
  sizes: [
    ['how long is the long rail', { kind: 'size', size: 'longRail.length' }],
    ['long rail, shoulder to shoulder', { kind: 'size', size: 'longRail.shoulders' }],
    ['how wide is leg three', { kind: 'size', size: 'leg.width', copy: 3 }],
    ['sizes of the top', { kind: 'sizes of part', part: 'top' }],
    ['show me leg two', { kind: 'sizes of part', part: 'leg', copy: 2 }],
    ['why is the long rail so long', { kind: 'why', size: 'longRail.length' }],
    ['how many legs', { kind: 'how many', part: 'leg' }],
    ['what moved', { kind: 'what moved' }],
    ['what no longer fits', { kind: 'what no longer fits' }],
  ],
  reckoning: [
    ['half of thirty one and five eighths', { kind: 'fraction of', numerator: 1, denominator: 2, of: { length: inches(31.625) } }],
    ['a third of the long rail length', { kind: 'fraction of', numerator: 1, denominator: 3, of: LONG_RAIL }],
    ['three times an inch and a half', { kind: 'times', factor: 3, of: { length: inches(1.5) } }],
    ['long rail length plus two inches', { kind: 'plus', left: LONG_RAIL, right: { length: inches(2) } }],
    ['thirty inches less one and a half', { kind: 'less', left: { length: inches(30) }, right: { length: inches(1.5) } }],
    ['divide sixty inches into five equal spaces', { kind: 'equal spaces', of: { length: inches(60) }, spaces: 5 }],
    ['divide sixty inches into equal spaces with four parts of an inch and a half', { kind: 'equal gaps', of: { length: inches(60) }, parts: 4, each: { length: inches(1.5) } }],
    ['long rail length in millimetres', { kind: 'in other unit', of: LONG_RAIL, unit: 'millimetre' }],
    ['in inches', { kind: 'in other unit', of: { lastAnswer: true }, unit: 'inch' }],
    ['plus a quarter', { kind: 'plus', left: { lastAnswer: true }, right: { length: inches(0.25) } }],
    ['less a sixteenth of an inch', { kind: 'less', left: { lastAnswer: true }, right: { length: inches(0.0625) } }],
    ['add forty two and seven eighths', { kind: 'plus', left: { lastAnswer: true }, right: { length: inches(42.875) } }],
    ['times three', { kind: 'times', factor: 3, of: { lastAnswer: true } }],
    ['divided by four', { kind: 'fraction of', numerator: 1, denominator: 4, of: { lastAnswer: true } }],
    ['half of that', { kind: 'fraction of', numerator: 1, denominator: 2, of: { lastAnswer: true } }],
  ],
  recording: [
    ['record leg two width three and one sixteenth', { kind: 'record', size: 'leg.width', copy: 2, length: inches(3.0625) }],
    ['leg four is three and a quarter wide', { kind: 'record', size: 'leg.width', copy: 4, length: inches(3.25) }],
    ['forget leg two width', { kind: 'withdraw measurement', size: 'leg.width', copy: 2 }],
    ['record leg one thickness', { kind: 'show', screen: { name: 'record', size: 'leg.thickness', copy: 1 } }],
    ['note the left board has a knot', { kind: 'note', text: 'the left board has a knot' }],
  ],
  'boards and cutting': [
    ['new board ninety six by eight and a quarter five quarter of red oak', { kind: 'new board', length: inches(96), width: inches(8.25), thickness: inches(1.25), species: 'red oak' }],
    ['knot from thirty to thirty four', { kind: 'board defect', what: 'knot', from: inches(30), to: inches(34) }],
    ['board three has a split from fifty to sixty', { kind: 'board defect', board: 3, what: 'split', from: inches(50), to: inches(60) }],
    ['across one to two and a half', { kind: 'narrow defect', narrowed: { fromEdge: inches(1), toEdge: inches(2.5) } }],
    ['board two tapers to seven', { kind: 'board is', board: 2, change: { farWidth: inches(7) } }],
    ['board two is ninety four long', { kind: 'board is', board: 2, change: { length: inches(94) } }],
    ['board two is used up', { kind: 'board used up', board: 2 }],
    ['how many boards', { kind: 'how many boards' }],
    ['show the rack', { kind: 'show', screen: { name: 'boards' } }],
    ['plan the cutting', { kind: 'plan cutting' }],
    ['take the plan', { kind: 'take plan' }],
    ['save the piece', { kind: 'save piece' }],
    ['save the plan', { kind: 'save plan' }],
    ['what do I cut next', { kind: 'next cut' }],
    ['where on board three', { kind: 'where on board', board: 3 }],
    ['read me the cuts', { kind: 'read cuts' }],
    ['cut', { kind: 'cut made' }],
    ['the kerf is three thirty seconds', { kind: 'set sawing', setting: { kerf: inches(3 / 32) } }],
    ['plan for the least sawing', { kind: 'set sawing', setting: { first: 'least sawing' } }],
    ['what do I buy', { kind: 'what to buy' }],
    ['does ninety six by eight help', { kind: 'does it help', length: inches(96), width: inches(8) }],
    ['print the cutting plan', { kind: 'print sheets', sheet: { what: 'cutting plan' } }],
  ],
  clocks: [
    ['start a thirty minute timer', { kind: 'start timer', timer: 'plain', durationMs: minutes(30) }],
    ['start the clamp timer', { kind: 'start timer', timer: 'clamp' }],
    ['start the open time for eight minutes', { kind: 'start timer', timer: 'open time', durationMs: minutes(8) }],
    ['start the timer', { kind: 'start step timer' }],
    ['how long is left', { kind: 'time left' }],
    ['how long has the open time got', { kind: 'time left', timer: 9 }],
    ['add five minutes', { kind: 'change timer', addMs: minutes(5) }],
    ['add an hour and a half to leg two clamps', { kind: 'change timer', timer: 7, addMs: minutes(90) }],
    ['take off two minutes', { kind: 'change timer', addMs: minutes(-2) }],
    ['take five minutes off the open time', { kind: 'change timer', timer: 9, addMs: minutes(-5) }],
    ['hold the timer', { kind: 'hold timer' }],
    ['resume the open time', { kind: 'resume timer', timer: 9 }],
    ['stop the clamp timer', { kind: 'stop timer', timer: 7 }],
    ['got it', { kind: 'acknowledge' }],
  ],
  'taking back': [
    ['scratch that', { kind: 'scratch that' }],
    ['put it back', { kind: 'put back' }],
  ],
  'talk, loudness and help': [
    ['say again', { kind: 'say again', how: 'as before' }],
    ['slower', { kind: 'say again', how: 'slower' }],
    ['digit by digit', { kind: 'say again', how: 'digit by digit' }],
    ['louder', { kind: 'louder' }],
    ['quieter', { kind: 'quieter' }],
    ['be quiet', { kind: 'be quiet' }],
    ['what can I say', { kind: 'what can I say' }],
    ['yes', { kind: 'yes' }],
    ['no', { kind: 'no' }],
  ],
  screens: [
    ['show the clocks', { kind: 'show', screen: { name: 'clocks' } }],
    ['show the parts', { kind: 'show', screen: { name: 'parts' } }],
    ['show all steps', { kind: 'show', screen: { name: 'steps' } }],
    ['show this step', { kind: 'show', screen: { name: 'step' } }],
    ['open the settings', { kind: 'show', screen: { name: 'settings' } }],
    ['show the journal', { kind: 'show', screen: { name: 'journal' } }],
    ['show the files', { kind: 'show', screen: { name: 'files' } }],
    ['menu', { kind: 'show', screen: { name: 'menu' } }],
    ['show me the number pad', { kind: 'show', screen: { name: 'record' } }],
    ['show help', { kind: 'show', screen: { name: 'help' } }],
  ],
  'clamps and coats': [
    ['my clamps press eight hundred pounds', { kind: 'set', setting: { clampLbf: 800 } }],
    ['each clamp presses four hundred kilograms', { kind: 'set', setting: { clampLbf: 882 } }],
    ['start the recoat clock', { kind: 'finish clock', which: 'recoat' }],
    ['start the curing timer for three days', { kind: 'finish clock', which: 'cure', durationMs: 259_200_000 }],
    ['when does the next coat go on', { kind: 'coats' }],
  ],
  'truing a face': [
    ['take the readings', { kind: 'read side', of: {} }],
    ['read the other face', { kind: 'read side', of: { face: 'other face' } }],
    ['read leg two', { kind: 'read side', of: { part: 'leg', copy: 2 } }],
    ['take the readings of the second edge of layer two of leg three', { kind: 'read side', of: { part: 'leg', copy: 3, board: 2, face: 'other edge' } }],
    ['read top board two edge', { kind: 'read side', of: { part: 'top', board: 2, face: 'edge' } }],
    ['take the thickness of the top', { kind: 'read side', of: { part: 'top' }, about: 'thickness' }],
    ['take the diagonals of the top', { kind: 'read side', of: { part: 'top' }, about: 'diagonals' }],
    ['sticks at the far end left high one sixteenth', { kind: 'surface reading', of: {}, what: 'sticks', at: 'far end', gap: inches(1 / 16), sense: 'left' }],
    ['the gap at twelve inches is one thirty second', { kind: 'surface reading', of: {}, what: 'along', at: inches(12), gap: inches(1 / 32) }],
    ['across in the middle hollow five thousandths', { kind: 'surface reading', of: {}, what: 'across', at: 'middle', gap: inches(0.005), sense: 'hollow' }],
    ['square at the far end light at the face one sixty fourth', { kind: 'surface reading', of: {}, what: 'square', at: 'far end', gap: inches(1 / 64), sense: 'face side' }],
    ['the thickness near the marked end is seven eighths', { kind: 'surface reading', of: {}, what: 'thickness', at: 'marked end', gap: inches(7 / 8) }],
    ['what do I plane', { kind: 'what to plane', of: {} }],
    ['how is it', { kind: 'is it flat', of: {} }],
    ['what to plane', { kind: 'what to plane', of: {} }],
    ['other side', { kind: 'other side', of: {} }],
    ['how many shavings', { kind: 'what to plane', of: {} }],
    ['where do I plane on the other face', { kind: 'what to plane', of: { face: 'other face' } }],
    ['how is the face', { kind: 'is it flat', of: {} }],
    ['is it flat', { kind: 'is it flat', of: {} }],
    ['is leg two out of wind', { kind: 'is it flat', of: { part: 'leg', copy: 2 } }],
    ['how thick will it be', { kind: 'thickness left', of: {} }],
    ['will they close', { kind: 'will they close', of: {} }],
    ['I planed it', { kind: 'surface planed', of: {} }],
    ['one shaving is four thousandths', { kind: 'set', setting: { shaving: inches(0.004) } }],
    ['my winding sticks are thirty inches long', { kind: 'set', setting: { stick: inches(30) } }],
  ],
  'rounding and settings': [
    ['round to thirty-seconds', { kind: 'set', setting: { rounding: { unit: 'inch', denominator: 32 } } }],
    ['round to the nearest sixteenth of an inch', { kind: 'set', setting: { rounding: { unit: 'inch', denominator: 16 } } }],
    ['round to half a millimetre', { kind: 'set', setting: { rounding: { unit: 'millimetre', step: nanometres(500_000) } } }],
    ['set the volume to six', { kind: 'set', setting: { volume: 6 } }],
    ['mute', { kind: 'set', setting: { volume: 0 } }],
    ['speak slowly', { kind: 'set', setting: { speech: 'slow' } }],
    ['speak normally', { kind: 'set', setting: { speech: 'normal' } }],
    ['dark screen', { kind: 'set', setting: { theme: 'dark' } }],
    ['larger text', { kind: 'set', setting: { textPercent: 125 } }],
    ['your name is partner', { kind: 'set', setting: { addressWord: 'partner' } }],
    ['stop listening', { kind: 'set', setting: { listening: false } }],
    ['speak up over the noise', { kind: 'set', setting: { speakUp: true } }],
    ['do not speak up', { kind: 'set', setting: { speakUp: false } }],
    ['wait for a lull', { kind: 'set', setting: { waitForLull: true } }],
    ['never wait for a lull', { kind: 'set', setting: { waitForLull: false } }],
    ['I stand far away', { kind: 'set', setting: { standing: 'across the shop' } }],
    ['look at the edge every two minutes', { kind: 'set', setting: { breakSeconds: 120 } }],
  ],
};

describe('what a maker says', () => {
  for (const [topic, lines] of Object.entries(SAID)) {
    it.each(lines)(`${topic}: “%s”`, (words, request) => {
      expect(parseRequest(words, ON_A_SIZE)).toEqual(request);
    });
  }

  it('makes at least sixty different requests', () => {
    const requests = Object.values(SAID).flat().map(([words]) => JSON.stringify(parseRequest(words, ON_A_SIZE)));
    expect(requests.filter((request) => request.includes('not understood'))).toEqual([]);
    expect(new Set(requests).size).toBeGreaterThanOrEqual(60);
  });
});

describe('the many ways to say one thing', () => {
  it.each<[Request, readonly string[]]>([
    [{ kind: 'next step' }, ['next', 'Next step, please.', 'go on', 'carry on', 'continue', "what's next?"]],
    [{ kind: 'step back' }, ['back', 'go back', 'step back', 'the previous step']],
    [{ kind: 'step done' }, ['done', 'finished', "that's done", 'I am done', 'I have finished this', 'this step is done']],
    [{ kind: 'scratch that' }, ['scratch that', 'undo', 'undo that', 'take that back', 'no, that is wrong', 'forget that']],
    [{ kind: 'say again', how: 'as before' }, ['say again', 'again', 'say that again', 'repeat', 'once more', 'pardon?', 'What did you say?']],
    [{ kind: 'acknowledge' }, ['got it', 'okay', 'OK', 'thanks', 'I heard you', 'acknowledge']],
    [{ kind: 'size', size: 'longRail.shoulders' }, [
      'long rail shoulders', 'the long rail, shoulder to shoulder', 'what is the long rail shoulder to shoulder', 'shoulder to shoulder of the long rail', 'Long-rail shoulder length',
      'how long is the long rail shoulder to shoulder', 'long rail between the tenons', 'tell me the long rail shoulders', 'long rails shoulder to shoulder',
    ]],
    [{ kind: 'size', size: 'longRail.length' }, ['how long is the long rail', 'how long are the long rails', "what's the length of the long rail", 'long rail length', 'the length of a long rail', 'how long should the long rail be']],
    [{ kind: 'size', size: 'leg.width', copy: 3 }, ['how wide is leg three', 'how wide is the third leg', 'width of leg number three', 'leg 3 width', 'the front left leg width', 'how wide is the front left leg', 'how wide is the leg front left']],
    [{ kind: 'size', size: 'longRailTenon.tenonThickness' }, ['how thick is the long rail tenon', 'long rail tenon thickness', 'thickness of the long rail tenons']],
    [{ kind: 'size', size: 'shortRailTenon.mortiseDepth' }, ['how deep is the short rail mortise', 'short rail mortice depth', 'depth of the short rail mortise']],
    [{ kind: 'size', size: 'inside.length' }, ['how long is the inside', 'inside length', 'what is the inside length']],
    [{ kind: 'size', size: 'height' }, ['how high is the table', 'how tall is the piece', 'height of the table', 'what is the height']],
    [{ kind: 'set', setting: { rounding: { unit: 'millimetre', step: nanometres(500_000) } } }, ['use millimetres', 'use millimeters', 'switch to millimetres', 'round to half a millimeter']],
    [{ kind: 'start timer', timer: 'plain', durationMs: 1_800_000 }, ['start a thirty minute timer', 'start a thirty-minute timer', 'set a timer for thirty minutes', 'start a timer for half an hour', 'thirty minute timer', 'start a 30 minute timer']],
    [{ kind: 'record', size: 'leg.width', copy: 2, length: inches(3.0625) }, [
      'record leg two width three and one sixteenth', 'record leg two width is three and a sixteenth inches', 'leg two width is 3 1/16', 'leg 2 width is 3-1/16"', 'leg two is three and a sixteenth wide',
      'the second leg is three and one sixteenth inches wide', 'I measured the width of leg two as three and one sixteenth',
    ]],
  ])('makes %j', (request, ways) => {
    for (const words of ways) expect([words, parseRequest(words, ON_A_SIZE)]).toEqual([words, request]);
  });
});

describe('durations', () => {
  it.each([
    ['thirty seconds', 0.5], ['ninety seconds', 1.5], ['a minute and a half', 1.5], ['five minutes', 5], ['a quarter of an hour', 15], ['half an hour', 30], ['an hour', 60], ['one hour and twenty minutes', 80],
    ['an hour and a half', 90], ['two and a half hours', 150], ['24 hours', 1440], ['a day', 1440], ['two days and three hours', 3060],
  ])('hears a timer for %s', (words, count) => {
    expect(parseRequest(`start a timer for ${words}`, bench())).toEqual({ kind: 'start timer', timer: 'plain', durationMs: count * 60_000 });
  });

  it('reads what the clamps are told and asked', () => {
    expect(parseRequest('the clamps are on', bench())).toEqual({ kind: 'start timer', timer: 'clamp', unlessNew: true });
    expect(parseRequest('when can I take the clamps off', bench())).toEqual({ kind: 'time left' });
    expect(parseRequest('five more minutes', bench())).toEqual({ kind: 'change timer', addMs: 300_000 });
  });

  it.each(['zero minutes', 'three', 'minutes', 'five minutes two hours', 'a minute and a minute', 'half', 'five five minutes'])('makes no timer of “%s”', (words) => {
    expect(parseRequest(`start a timer for ${words}`, bench()).kind).toBe('not understood');
  });
});
