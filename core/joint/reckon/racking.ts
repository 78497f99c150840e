import { nanometres } from '../../length/length.ts';
import { reckoning } from '../../reckoning/reckoning.ts';
import { failure, success } from '../../result.ts';
import { rackingOf } from '../racking.ts';
import { strengthOf, STRENGTH_SOURCE, STRENGTH_SPECIES } from '../../wood/woodStrength.ts';

export const GUIDANCE = 'Guidance by plain statics, not an approval: glue, grain, fit and use all weigh in. Where people can be hurt, local codes and a licensed engineer decide.';

export const racking = reckoning({
  name: 'racking',
  about: 'how much racking a mortise and tenon stands, as guidance by plain statics',
  inputs: {
    tenonLength: { kind: 'length', say: 'tenon length' },
    tenonWidth: { kind: 'length', say: 'tenon width, of each when there are two' },
    tenonThickness: { kind: 'length', say: 'tenon thickness' },
    gap: { kind: 'length', say: 'between twin tenons, when there are two', optional: true },
    species: { kind: 'choice', options: STRENGTH_SPECIES, say: 'wood', default: 'hard maple' },
    push: { kind: 'number', unit: 'newtons', least: 0, most: 100_000, say: 'push along the top of the frame', default: '300' },
    height: { kind: 'length', say: 'height of the push over the floor', default: '700 mm' },
  },
  reckon: ({ tenonLength, tenonWidth, tenonThickness, gap, species, push, height }) => {
    const wood = strengthOf(species);
    if (!wood) return failure({ key: 'species', message: `The table has no ${species}.` });
    if (tenonLength <= 0 || tenonWidth <= 0 || tenonThickness <= 0) return failure({ message: 'A tenon has some length, width and thickness: more than nothing.' });
    const rectangle = (from: number): { readonly top: typeof tenonWidth; readonly bottom: typeof tenonWidth; readonly length: typeof tenonLength } =>
      ({ top: nanometres(from), bottom: nanometres(from + tenonWidth), length: tenonLength });
    const cheek = gap === undefined ? [rectangle(0)] : [rectangle(0), rectangle(tenonWidth + gap)];
    const found = rackingOf(cheek, tenonThickness, wood, { newtons: push, heightMm: height / 1e6 });
    return success({
      result: [
        { key: 'joint', number: found.jointNm, unit: 'N·m' }, { key: 'tenon', number: found.tenonNm, unit: 'N·m' }, { key: 'glue', number: found.glueNm, unit: 'N·m' },
        { key: 'asked', number: found.askedNm, unit: 'N·m' }, ...(Number.isFinite(found.times) ? [{ key: 'times', number: found.times, unit: 'times what is asked' }] : []),
      ],
      how: [
        'Tenon as a cantilever: rupture × thickness × width² / 6, for two tenons their section about their common middle.',
        'Glue in torsion: 2 × shear × J / r over both cheeks; the shear is taken as half of the wood\'s along the grain, for the grains cross (an assumption, no source).',
        'Asked: push × height / 4, shared by two frames with two joints each.',
      ],
      source: ['plain statics', STRENGTH_SOURCE],
      warnings: [GUIDANCE],
    });
  },
});
