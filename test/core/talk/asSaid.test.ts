import { describe, expect, it } from 'vitest';
import type { Request } from '../../../core/bench/request.ts';
import { parseRequest } from '../../../core/talk/parse.ts';
import { bench } from './benches.ts';

/** Ways to say a thing that are as good as the one the bench teaches. Common practice, no source. */
const AS_SAID: Partial<Record<Request['kind'], readonly string[]>> = {
  'where am I': ['what was I doing', 'what step am I on', 'what should I do now', 'where did we stop', 'where was I', 'what am I doing', 'where do I start', 'what is this step', 'what are we doing', 'what was I up to', 'where did I get to', 'what do we do now'],
  'next step': ['what comes next', 'what do I do after this', 'the next one', 'what is the next step', "what's the next step", 'what is next', 'carry on', 'what next', 'what is next after this', 'what do I do next', 'show me the next step'],
  'step back': ['the step before', 'previous step', 'go back one step'],
  'step done': ['done with this', 'I am done', "that's done"],
  'what is left': ['how far have I got', 'how many steps are there', 'how much is left to do', "what's left", 'how far am I', 'how far along am I', 'what have I got left', 'how much is done', 'am I nearly done', 'how long will it take', 'when will I be done today'],
  'tell the step': ['read me the whole step', 'read the step', 'what do I need for this', 'what must I measure', 'what do I record here', 'how do I check it', 'how flat must it be', 'what is the tolerance', 'how close do I have to be', 'did I get that right', 'how tight should the tenon fit', 'what thickness do I plane to', 'how long do I cut it', 'read it all', 'what should I be careful with', 'is there anything to watch out for', 'tell me the cautions'],
  'start timer': ['set the timer to twenty minutes', 'set an alarm for ten minutes', 'the clamps are on', 'timer ten minutes', 'set a timer for half an hour', 'remind me in twenty minutes', 'remind me to sharpen in twenty minutes', 'start the sharpening break', 'clamps on', 'the clamps are on now', 'I have put the clamps on', 'start a sharpening break in twenty minutes', 'remind me to sharpen every half hour', 'remind me to sharpen every hour'],
  'time left': ['how long do the clamps stay on', 'how long must it stay clamped', 'when do the clamps come off', 'what timers are running', 'how long do I have', 'how much time do I have left', 'how much open time is left', 'time left', 'how long have the leg two clamps', 'can I take the clamps off yet', 'can the clamps come off now', 'how long have the clamps been on', 'how long has it been in the clamps', 'how long has the open time been running', 'is the glue still open', 'is the time up', 'is it dry yet', 'how long until it is dry', 'can I take it out of the clamps', 'how long until I can take the clamps off', 'how long has it been going', 'what is running', 'is the clock running', 'how much longer in the clamps', 'is it ready to come out of the clamps', 'how long has the glue been on', 'has the glue set', 'tell me when the clamps come off'],
  'what to buy': ['what wood should I buy', 'how many boards do I need', 'do I need more wood', 'how much wood do I need to buy', 'how much does it cost', 'how much wood do I need', 'is there enough wood', 'what do I need to buy', 'how many board feet do I need', 'what to buy', 'how many board feet'],
  'how many boards': ['what boards do I have', 'how many boards are there'],
  'next cut': ['which board do I cut first', 'where do I cut', "what's the next cut", 'where do I cut this board', 'which board is next'],
  'plan cutting': ['make a cutting plan', 'plan the cuts'],
  'faces of': ['which way up is leg two', 'which face is up', 'which side is out', 'where does this one go', 'where does leg two go', 'where is leg three', 'which face of leg two is best', "what's the reference face of leg two", 'show me the map of leg two', 'which one is leg two', 'which way does the grain go'],
  'what to plane': ['how much do I take off', 'how much is left to plane', 'where should I plane', 'where is it high', 'how much more do I need to plane off', 'how much do I need to take off', 'where are the high spots', 'where are the low spots', 'which corner is high', 'how many more shavings'],
  'is it flat': ['is it flat enough', 'is it square enough', 'is it square', 'is it flat', 'how is it', 'how much wind is there', 'is there any wind in it', 'is it twisted', 'is it out of square', 'is the edge square', 'how square is it', 'how much is it out'],
  air: ['sixty percent humidity', 'the humidity is sixty percent'],
  'stock moisture': ['the wood is at nine percent', 'moisture nine percent'],
  'how is the edge': ['the chisel is dull', 'is the chisel sharp', 'it needs sharpening', 'when should I sharpen', 'when did I last sharpen it', 'is it time to sharpen', 'when must I hone', 'how sharp is it', 'do I need to sharpen', 'should I strop now', 'how long since I sharpened', 'did I hone the chisel today', 'is the jack plane still sharp', 'how long has it been since I last honed it', 'how do I know it is sharp', 'does it need the strop', 'it is getting dull'],
  'board used up': ['the board is no good', 'board two is used up'],
  'glue time': ['when is the glue dry', 'is the glue dry yet', 'when can I work on it', 'how long is the glue good for', 'how long does the glue last', 'how long before I can work it', 'what glue do I use', 'how long is the open time', "what's the clamp time", 'how long does the glue stay open', 'how long does the glue take to dry', 'how long until the glue is dry'],
  'glue tonight': ['how warm must it be', 'can I glue today', 'is it too cold to glue'],
  'what time': ["what's the time", 'how late is it', 'tell me the time'],
  'which is which': ['which leg is which', 'which one is which', 'how do I tell the legs apart', 'which is which of the long rails', 'which leg is front left', 'what goes front left'],
  'what wood': ['what wood is it', 'which wood do I need', "what's it made of", 'what kind of wood is the top', 'what are the legs made of', 'what wood are the long rails'],
  size: ['how many inches long is the leg', 'how many inches is the leg two width', 'how far apart are the shoulders of the long rail', 'how long is the tenon of the short rail', 'length of the tenon of the short rail', 'how deep is the mortise of the long rail', 'what length is the long rail', 'what is the distance between the shoulders of the long rail', 'how thick is it', 'how long is it now', 'how wide should it be', "what's the length"],
  'marks of joint': ['how far down is the mortise of the long rail', 'how far from the top is the long rail mortise', 'how deep is the haunch of the long rail', 'how far down is the haunch of the short rail', 'where does the mortise of the long rail start', 'how far is the long rail mortise from the top', 'what is the haunch of the short rail', 'how big is the haunch of the long rail'],
  record: ['record two and a half for leg two width', 'leg two is two and a half wide', 'leg two width is two and a half'],
  'record off': ['leg two is a sixteenth short', 'the top came out one eighth too wide', 'I cut it one thirty second too short', 'it is a sixteenth narrow', 'I made leg two a sixteenth too thin', 'I made leg two a sixteenth short', 'I cut the long rail an eighth too short'],
  'in other unit': ['how many millimeters long is the leg', 'convert seven eighths to millimeters', "what's seven eighths in millimeters", 'give me that in millimeters', 'say it in millimeters'],
  'fraction of': ['where is the middle of the top width', 'half the top width', 'where is the center of the long rail', 'half that'],
  'top in a year': ['how much does the top shrink', 'how much will the top move'],
  'stop timer': ['the clamps are off', 'the clamps are off now', 'I took the clamps off'],
  made: ['leg two is done', 'I finished this leg', 'the mortise is done', 'all the legs are done'],
  coats: ['what finish is it', 'what finish', 'when can I put the next coat on', 'how long until the next coat', 'how long between coats', 'how long does the finish take to dry', 'how many more coats', 'when do I put on the next coat', 'how many coats do I need'],
  'what air': ['how warm is it', 'how cold is the shop', 'what is the humidity'],
  'how deep': ['how deep should I chop', 'how deep is this mortise', 'how much more do I chop', 'how much deeper do I go', 'am I deep enough'],
  marks: ['where do I mark the mortises'],
  gauges: ['how do I set the marking gauge', 'what do I set the mortise gauge to', 'where do I set the gauge', 'where do I put the gauge', 'gauge setting for the long rail mortise', 'set the gauge for the short rail tenon', 'how far in is the long rail mortise', 'how far from the face is the long rail mortise', 'what do I mark first'],
  'sizes of part': ['what are the dimensions of the top', 'give me the measurements of the leg'],
  'how many': ['how many of these', 'how many do I need', 'how many buttons do I make'],
  'cut made': ['I cut the board', 'that board is cut'],
  'where on board': ['what goes on board one', 'what can I get from board two', 'what can I cut from this board', 'what goes on this board'],
  'board defect': ['there is a knot from ten to twelve', 'this board has a check from ten to twelve', 'there is a crack from ten to twelve'],
  'say again': ['tell me again', 'read that again', "I didn't hear you", 'can you say that again'],
  louder: ['a bit louder', 'turn it up', 'turn up the volume'],
  quieter: ['a little quieter', 'turn the volume down'],
  'scratch that': ['delete that', 'scratch that last one', 'undo the last thing', 'I take that back'],
  note: ['note that the left leg has a knot', 'write down that the stretcher is tight'],
  'cutting stops': ['I stopped chopping'],
  no: ['cancel', 'never mind', 'leave it'],
  which: ['I am planing', 'how many inches is the top', 'how far down is the mortise', 'I honed the plane', 'shoulder to shoulder', 'how far apart are the shoulders', 'how far does the top overhang', "what's the overhang of the top", 'the middle of the top', 'how far apart are the legs', 'what is the distance between the legs'],
  'edge care': ['I sharpened the chisel', 'I have sharpened it', 'I honed the jack plane', 'I have just honed the jack plane', 'I just honed it', 'I just sharpened the jack plane iron'],
  'what moved': ['what does that change', 'what changed'],
  'be quiet': ['stop talking', 'be quiet', 'hush'],
  'what was done': ['what did I write down', 'did you write that down', 'what did I do yesterday', 'what did I do last', 'what have I done today', 'what did we get done last time', 'what was the last thing I did', 'what did I get done', 'read me my notes'],
  'what was measured': ['what have I measured', 'what did I measure', 'read me all the measurements', 'is anything out of tolerance', 'is anything off', 'did I measure the legs', 'how far off is leg two', 'what was the last measurement'],
  'go to step': ['glue up the legs', 'take me to the glue up', 'I want to glue up the top'],
  'ready to glue': ['am I ready to glue up', 'can I glue it up now', 'should I rehearse first'],
  'coat on': ['the first coat is on', 'another coat is on', 'second coat is on', 'I have put the third coat on', 'the coat is on now'],
  'read cuts': ['what cuts are left', 'how many cuts are left'],
  'in fractions': ['how many sixteenths is that', 'how many sixteenths in seven eighths', 'how many thirty seconds is leg two width', 'what is that in sixteenths'],
  'defect without ends': ['there is a knot at twenty inches', 'this board has a knot', 'board two has a crack'],
  'which boards': ['which board is the top from', 'which boards do I use for the legs'],
  'board feet': ['how many board feet do I have', 'how much lumber do I have', 'how many board feet is board one', 'how many board feet is that'],
  'what no longer fits': ['what fits no more', 'does it matter'],
  acknowledge: ['mute the alarms', 'turn off the alarm'],
  'which chisel': ['what size chisel do I need', 'how wide a chisel do I need', 'how wide is the chisel'],
  'what can I say': ['what can I say here', 'how do I set a timer', 'what do I say to start a clock', 'what can I say about clocks', 'how do I undo something', 'how do I write down a measurement', 'what can I ask you', 'I need help', 'what do I say'],
};

/** Nothing is being told piece by piece, so that the next is the next step. */
const resting = bench({ screen: { name: 'size', size: 'leg.width', copy: 2 } });

describe('a maker in the middle of the work is understood', () => {
  it.each(Object.entries(AS_SAID).flatMap(([kind, ways]) => ways.map((words) => [kind, words] as const)))('%s: “%s”', (kind, words) => {
    expect(parseRequest(words, resting).kind).toBe(kind);
  });
});
