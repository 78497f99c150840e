import { assertNever } from '../result.ts';
import type { Bench } from '../bench/bench.ts';
import type { Response } from '../bench/reply.ts';
import type { Request } from '../bench/request.ts';
import type { Moment } from '../clock/moment.ts';
import { respondToAir } from './air.ts';
import { readAnswer } from './answers.ts';
import { respondToEdge } from './edges.ts';
import { respondToBuying } from './buying.ts';
import { respondToCutting } from './cutting.ts';
import { respondToRack } from './rack.ts';
import { withPortions } from './inTurn.ts';
import { respondToGluing } from './gluing.ts';
import { respondToHistory } from './history.ts';
import { respondToFaces } from './faces.ts';
import { respondToHandwork } from './handwork.ts';
import { respondToJoint } from './joints.ts';
import { respondToKeeping } from './keeping.ts';
import { respondToLayout } from './layout.ts';
import { withPlanLooked } from './planLooked.ts';
import { respondToPaper } from './paper.ts';
import { respondToReckon } from './reckon.ts';
import { respondToRecord } from './record.ts';
import { respondToSize } from './sizes.ts';
import { respondToTalk } from './talk.ts';
import { respondToTimer } from './timers.ts';
import { withForms } from './toSay.ts';
import { respondToTruing } from './truing.ts';
import { respondToWork } from './work.ts';

/**
 * The one path: what the bench answers to a request, and what is to be written down before it is said.
 * Pure: it has no clock, no storage, no screen; the same bench, request and moment give the same response.
 */
export function respond(bench: Bench, request: Request, now: Moment): Response {
  return withPortions(request, withForms(withPlanLooked(bench, answerTo(bench, request, now), now)));
}

function answerTo(bench: Bench, request: Request, now: Moment): Response {
  switch (request.kind) {
    case 'next step': case 'step done':
      return bench.state.gluing ? respondToGluing(bench, { kind: 'next move' }, now) : respondToWork(bench, request, now);
    case 'where am I': case 'made': case 'step back': case 'skip step': case 'reopen step':
    case 'go to step': case 'what is left': case 'tell the step': case 'place': case 'coat on':
      return respondToWork(bench, request, now);
    case 'what goes wrong': case 'trouble': case 'reference sides': case 'easing':
      return respondToHandwork(bench, request);
    case 'size': case 'sizes of part': case 'why': case 'how many': case 'the piece': case 'what wood': case 'what moved': case 'what no longer fits':
      return respondToSize(bench, request);
    case 'marks': case 'marks of joint': case 'layout face': case 'how deep': case 'which chisel': case 'how to chop': case 'longest tenon': case 'how strong': case 'joint by the book': case 'foot bevel': case 'bevel': case 'chop stage':
      return respondToJoint(bench, request);
    case 'like faces': case 'like end': case 'like board': case 'board arches': case 'faces of': case 'place them': case 'which is which': case 'second best': case 'change over': case 'take placing': case 'what counts':
      return respondToFaces(bench, request);
    case 'fraction of': case 'times': case 'plus': case 'less': case 'equal spaces': case 'equal gaps': case 'in other unit': case 'in fractions':
      return respondToReckon(bench, request);
    case 'record': case 'record off': case 'off somehow': case 'withdraw measurement': case 'note': case 'reading':
      return respondToRecord(bench, request, now);
    case 'what was done': case 'what was measured':
      return respondToHistory(bench, request, now);
    case 'diagonals': case 'what diagonals': case 'tolerance': case 'gauges':
      return respondToLayout(bench, request);
    case 'sheets': case 'print sheets': case 'save sheets': case 'print scale':
      return respondToPaper(bench, request, now);
    case 'cutting begins': case 'cutting stops': case 'edge care': case 'how is the edge': case 'does honing pay': case 'guide projection': case 'guide angle':
      return respondToEdge(bench, request, now);
    case 'put board': case 'new board': case 'board is': case 'board defect': case 'defect without ends': case 'narrow defect': case 'board used up': case 'how many boards': case 'boards came': case 'board feet': case 'save boards': case 'tell board': case 'take in boards':
      return respondToRack(bench, request);
    case 'plan cutting': case 'stop planning': case 'take plan': case 'how good is the plan': case 'save plan': case 'next cut': case 'where on board': case 'read cuts': case 'which boards': case 'cut made': case 'set sawing': case 'rough size': case 'allowances': case 'part rough':
      return respondToCutting(bench, request);
    case 'what to buy': case 'board thickness': case 'does it help': case 'bought':
      return respondToBuying(bench, request);
    case 'air': case 'stock moisture': case 'what air': case 'wood in this air': case 'is the stock ready': case 'how dry must it be': case 'how long to rest': case 'top in a year': case 'rest seen': case 'is it settled':
    case 'glue tonight': case 'glue time': case 'label': case 'how many clamps': case 'how long to warm':
      return respondToAir(bench, request, now);
    case 'read side': case 'surface reading': case 'leave out reading': case 'other side': case 'surface planed': case 'what to plane': case 'is it flat': case 'thickness left': case 'will they close':
      return respondToTruing(bench, request, now);
    case 'begin gluing': case 'ready to glue': case 'next move': case 'leave gluing': case 'divide gluing':
      return respondToGluing(bench, request, now);
    case 'finish clock': case 'coats': case 'start timer': case 'start step timer': case 'time left': case 'what time': case 'change timer': case 'hold timer':
    case 'resume timer': case 'stop timer': case 'acknowledge':
      return respondToTimer(bench, request, now);
    case 'scratch that': case 'put back': case 'load piece': case 'save piece': case 'take in everything': case 'set':
      return respondToKeeping(bench, request);
    case 'say again': case 'tell in turn': case 'louder': case 'quieter': case 'be quiet': case 'what can I say': case 'show': case 'which': case 'not understood':
      return respondToTalk(bench, request);
    case 'yes': case 'no': case 'choose': case 'answer length': case 'answer reading': case 'answer sense': {
      const read = readAnswer(bench, request);
      return 'entries' in read ? read : answerTo({ ...bench, conversation: { ...bench.conversation, question: null } }, read, now);
    }
    default:
      return assertNever(request);
  }
}
