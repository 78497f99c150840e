import { reckoning, type Fields, type Figure } from '../../reckoning/reckoning.ts';
import { failure, success, type Result } from '../../result.ts';
import { bestPlacing, USUAL_ORDER, type Arrangement, type Placing } from '../assign.ts';
import { sayChange, sayLoss, sayPlaced, type PartNames } from '../explain.ts';
import { FACES, TURNS, type Face } from '../face.ts';
import { LEVEL_WORDS } from '../levels.ts';
import { checkLikings, NO_LIKES, QUALITIES, type CopyLikes, type Liking, type Quality } from '../likes.ts';
import { sidesIn } from '../stand.ts';

const PLACES = ['front left', 'front right', 'back right', 'back left'];
const NAMES: PartNames = { one: 'leg', many: 'legs' };
const SUCH = 'best A, hide B C, glue lines B D, straight A, arch up, grain down';

const leg = (number: number) => ({ kind: 'words', say: `what is told of leg ${number}`, such: SUCH, default: 'nothing' }) as const;

const FIELDS = {
  leg1: leg(1), leg2: leg(2), leg3: leg(3), leg4: leg(4),
  section: { kind: 'choice', options: ['square', 'oblong'], say: 'an oblong leg cannot be turned a quarter: its faces A and C look to the front and the back', default: 'square' },
} as const satisfies Fields;

export const faces = reckoning({
  name: 'faces',
  about: 'which leg goes into which corner, and how it is turned, so that the faces liked show; the second best, and why it lost',
  inputs: FIELDS,
  reckon: ({ leg1, leg2, leg3, leg4, section }) => {
    const likes: CopyLikes[] = [];
    for (const [index, text] of [leg1, leg2, leg3, leg4].entries()) {
      const read = readLikes(text);
      if (!read.ok) return failure({ key: `leg${index + 1}`, message: read.fault });
      likes.push(read.value);
    }
    const turns = TURNS.filter(({ front }) => section === 'square' || front === 'A' || front === 'C');
    const problem: Placing = { stand: { kind: 'upright', places: PLACES.map((name) => ({ name, sides: sidesIn(name) })), turns }, likes, order: USUAL_ORDER };
    const { best, second, asGood, ways } = bestPlacing(problem);
    return success({
      result: [
        ...figures('', best), { key: 'asGood', number: ways - 1, unit: 'other ways that are as good' },
        ...(asGood === undefined ? [] : [{ key: 'asGoodBy', text: sayChange(NAMES, best, asGood) }]),
        ...(second === undefined ? [] : [...figures('second ', second), { key: 'secondBy', text: sayChange(NAMES, best, second) }, { key: 'whySecond', text: sayLoss(NAMES, USUAL_ORDER, best, second) }]),
      ],
      how: ['Every placing and every turn is weighed (dynamic programming); what comes first counts before all that follows.', ...USUAL_ORDER.map((level, index) => `${index + 1}: ${LEVEL_WORDS[level]}.`)],
      source: ['exact search (dynamic programming)', 'the order of what counts: common practice, no source'],
    });
  },
});

function figures(before: string, { legs }: Arrangement): readonly Figure[] {
  return legs.map((placed) => ({ key: `${before}${placed.place.name}`, text: sayPlaced(NAMES, placed, 'upright') }));
}

/** 'best A, hide B C, arch up': a sentence what is wrong with it, else what was told. */
function readLikes(text: string): Result<CopyLikes, string> {
  if (text.trim() === 'nothing') return success(NO_LIKES);
  let likes = NO_LIKES;
  const likings: Liking[] = [];
  for (const wish of text.split(',').map((part) => part.trim()).filter((part) => part !== '')) {
    const end = /^(arch|grain) (up|down)$/i.exec(wish);
    if (end) {
      likes = { ...likes, [end[1]?.toLowerCase() === 'arch' ? 'arch' : 'up']: end[2]?.toLowerCase() === 'up' ? 'numbered' : 'other' };
      continue;
    }
    const liking = readLiking(wish);
    if (liking === undefined) return failure(`“${wish}” is no wish. Expected wishes with commas between, such as ${SUCH}; the faces are A, B, C and D, and the wishes ${[...QUALITIES.filter((one) => one !== 'plain'), 'arch', 'grain'].join(', ')}.`);
    likings.push(liking);
  }
  const checked = checkLikings(likes, likings, 2);
  return checked.ok ? checked : failure(`${checked.fault}.`);
}

function readLiking(wish: string): Liking | undefined {
  const words = wish.split(/\s+/);
  const letters = words.filter((word): word is Face => FACES.includes(word as Face));
  const as = words.filter((word) => !FACES.includes(word as Face) && word !== 'and' && word !== 'grain').join(' ').toLowerCase();
  const quality = QUALITIES.find((one): one is Quality => one === as && one !== 'plain');
  return quality === undefined || letters.length === 0 ? undefined : { faces: letters, as: quality };
}
