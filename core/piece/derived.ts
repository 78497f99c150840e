import type { JsonNode } from './jsonNode.ts';
import { memberOf } from './jsonNode.ts';

/** Sizes that every part has without their being written down: what to mark on the boards before the finished sizes. */
export interface DerivedSize {
  readonly key: string;
  readonly is: string;
}

/**
 * The derived sizes of a part, always of one board or layer as it is cut: a lamination's `roughThickness` is a layer's, a panel's
 * `roughWidth` a board's. Finished size plus allowance is common practice, no source.
 */
export function derivedSizes(part: JsonNode, id: string, hasAfterRest: boolean): readonly DerivedSize[] {
  const made = memberOf(part, 'made');
  const layers = wholeNumber(memberOf(made, 'layers'));
  const boards = wholeNumber(memberOf(made, 'boards'));
  const width = boards === undefined ? `${id}.width` : `${id}.boardWidth`;
  const thickness = layers === undefined ? `${id}.thickness` : `${id}.layerThickness`;
  return [
    ...(layers === undefined ? [] : [{ key: 'blankThickness', is: `${layers} * ${id}.layerThickness` }]),
    ...(boards === undefined ? [] : [{ key: 'boardWidth', is: `${id}.width / ${boards}` }]),
    { key: 'roughLength', is: [`${id}.length`, ...horns(part).map((horn) => `${id}.${horn}`), 'allowance.roughLength'].join(' + ') },
    { key: 'roughWidth', is: `${width} + allowance.roughWidth` },
    { key: 'roughThickness', is: `${thickness} + allowance.roughThickness` },
    ...(hasAfterRest ? [{ key: 'ripWidth', is: `${width} + allowance.afterRest` }] : []),
  ];
}

/** Left on the ends until the joints are glued. */
function horns(part: JsonNode): readonly string[] {
  return ['horn', 'lowerHorn'].filter((horn) => memberOf(memberOf(part, 'sizes'), horn) !== undefined);
}

/** What a haunch measures where the file does not say: as wide as the shoulder that it fills, and as long as the tenon is thick (Joyce: a third of the rail, square; common practice). */
export function derivedJointSizes(joint: JsonNode, id: string): readonly DerivedSize[] {
  if (memberOf(joint, 'haunch') === undefined) return [];
  const width = memberOf(memberOf(joint, 'sizes'), 'topShoulder') === undefined ? [] : [{ key: 'haunchWidth', is: `${id}.topShoulder` }];
  return [...width, { key: 'haunchLength', is: `${id}.tenonThickness` }];
}

function wholeNumber(node: JsonNode | undefined): number | undefined {
  return node?.kind === 'number' && Number.isInteger(node.value) && node.value > 0 ? node.value : undefined;
}
