import type { Across, Ground, Species, Strength } from './speciesFigures.ts';

/**
 * USDA Forest Products Laboratory, Wood Handbook (GTR-190). Shrinkage and coefficients 'read' were read in the tables or in a reproduction of them; those
 * from memory agree with each other by C = 1 / (3000 / S − 20). Volumes are left out: nothing here is reckoned from them.
 */
type Given = Across & { readonly ground: Ground };

function read(radial: number, tangential: number): Given {
  return { radial, tangential, ground: 'read' };
}

function recalled(radial: number, tangential: number): Given {
  return { radial, tangential, ground: 'from memory' };
}

function strong(rupturePsi: number, stiffnessMpsi: number, shearPsi: number, hardnessLbf: number, ground: Ground = 'read'): Strength & { readonly ground: Ground } {
  return { rupturePsi, stiffnessMpsi, shearPsi, hardnessLbf, ground };
}

export const SPECIES: readonly Species[] = [
  { name: 'white ash', also: ['ash'], shrinkage: read(4.9, 7.8), coefficient: read(0.00169, 0.00274), gravity: 0.6, gravityGround: 'read', strength: strong(15_000, 1.74, 1_910, 1_320) },
  { name: 'American beech', also: ['beech'], shrinkage: read(5.5, 11.9), coefficient: read(0.0019, 0.00431), gravity: 0.64, gravityGround: 'read', strength: strong(14_900, 1.72, 2_010, 1_300) },
  { name: 'yellow birch', also: ['birch'], shrinkage: read(7.3, 9.5), coefficient: read(0.00256, 0.00338), gravity: 0.62, gravityGround: 'read', strength: strong(16_600, 2.01, 1_880, 1_260) },
  { name: 'paper birch', also: ['white birch'], shrinkage: read(6.3, 8.6), coefficient: read(0.00219, 0.00304), gravity: 0.55, gravityGround: 'read', strength: strong(12_300, 1.59, 1_210, 910) },
  { name: 'black cherry', also: ['cherry'], shrinkage: read(3.7, 7.1), coefficient: read(0.00126, 0.00248), gravity: 0.5, gravityGround: 'read', strength: strong(12_300, 1.49, 1_700, 950, 'from memory') },
  { name: 'hard maple', also: ['sugar maple', 'rock maple'], shrinkage: recalled(4.8, 9.9), coefficient: read(0.00165, 0.00353), gravity: 0.63, gravityGround: 'read', strength: strong(15_800, 1.83, 2_330, 1_450) },
  { name: 'red maple', also: ['soft maple', 'maple'], shrinkage: recalled(4, 8.2), coefficient: read(0.00137, 0.00289), gravity: 0.54, gravityGround: 'read', strength: strong(13_400, 1.64, 1_850, 950, 'from memory') },
  { name: 'silver maple', also: [], shrinkage: recalled(3, 7.2), coefficient: read(0.00102, 0.00252), gravity: 0.47, gravityGround: 'read', strength: strong(8_900, 1.14, 1_480, 700, 'from memory') },
  { name: 'red oak', also: ['oak'], coefficient: read(0.00158, 0.00369), gravity: 0.63, gravityGround: 'read', strength: strong(14_300, 1.82, 1_780, 1_290, 'from memory'),
    remark: 'sold as a group: its coefficient is a fifth larger than northern red oak alone; strength is of northern red oak' },
  { name: 'northern red oak', also: [], shrinkage: recalled(4, 8.6), gravity: 0.63, gravityGround: 'read', strength: strong(14_300, 1.82, 1_780, 1_290, 'from memory') },
  { name: 'white oak', also: [], shrinkage: read(5.6, 10.5), coefficient: read(0.0018, 0.00365), gravity: 0.68, gravityGround: 'from memory', strength: strong(15_200, 1.78, 2_000, 1_360, 'from memory'),
    remark: 'sold as a group: the coefficient is of the group, the shrinkage of the one species' },
  { name: 'black walnut', also: ['walnut'], shrinkage: read(5.5, 7.8), coefficient: read(0.0019, 0.00274), gravity: 0.55, gravityGround: 'from memory', strength: strong(14_600, 1.68, 1_370, 1_010, 'from memory') },
  { name: 'yellow-poplar', also: ['poplar', 'tulipwood'], shrinkage: read(4.6, 8.2), gravity: 0.42, gravityGround: 'from memory', strength: strong(10_100, 1.58, 1_190, 540, 'from memory') },
  { name: 'basswood', also: ['American basswood'], shrinkage: read(6.6, 9.3), coefficient: read(0.0023, 0.0033), gravity: 0.37, gravityGround: 'from memory' },
  { name: 'butternut', also: ['white walnut'], shrinkage: read(3.4, 6.4), coefficient: read(0.00116, 0.00223), gravity: 0.38, gravityGround: 'from memory' },
  { name: 'red alder', also: ['alder'], shrinkage: read(4.4, 7.3), coefficient: read(0.00151, 0.00256), gravity: 0.41, gravityGround: 'from memory' },
  { name: 'American elm', also: ['elm'], shrinkage: recalled(4.2, 9.5), coefficient: recalled(0.00144, 0.00338), gravity: 0.5, gravityGround: 'from memory' },
  { name: 'sweetgum', also: ['gum'], shrinkage: recalled(5.3, 10.2), coefficient: recalled(0.00183, 0.00365), gravity: 0.52, gravityGround: 'from memory' },
  { name: 'American sycamore', also: ['sycamore'], shrinkage: recalled(5, 8.4), coefficient: recalled(0.00172, 0.00296), gravity: 0.49, gravityGround: 'from memory' },
  { name: 'eastern white pine', also: ['white pine'], shrinkage: recalled(2.1, 6.1), coefficient: recalled(0.00071, 0.00212), gravity: 0.35, gravityGround: 'from memory', strength: strong(8_600, 1.24, 900, 380, 'from memory') },
  { name: 'ponderosa pine', also: ['pine'], shrinkage: recalled(3.9, 6.2), coefficient: recalled(0.00133, 0.00216), gravity: 0.4, gravityGround: 'from memory' },
  { name: 'sugar pine', also: [], shrinkage: recalled(2.9, 5.6), coefficient: recalled(0.00099, 0.00194), gravity: 0.36, gravityGround: 'from memory' },
  { name: 'Douglas-fir', also: [], shrinkage: read(4.8, 7.6), coefficient: read(0.00165, 0.00267), gravity: 0.48, gravityGround: 'read', strength: strong(12_400, 1.95, 1_130, 710) },
  { name: 'white fir', also: ['fir'], shrinkage: read(3.3, 7), coefficient: read(0.00112, 0.00245), gravity: 0.39, gravityGround: 'from memory' },
  { name: 'sapele', also: [], shrinkage: recalled(4.6, 7.4), gravity: 0.55, gravityGround: 'from memory', strength: strong(15_300, 1.82, 2_250, 1_510, 'from memory') },
  { name: 'true mahogany', also: ['mahogany'], shrinkage: recalled(3, 4.1), coefficient: recalled(0.00172, 0.00238), gravity: 0.45, gravityGround: 'from memory', strength: strong(11_500, 1.5, 1_230, 800, 'from memory'),
    remark: 'shrinkage and coefficient do not agree with each other; the larger movement, by the coefficient, is taken' },
  { name: 'African mahogany', also: ['khaya'], shrinkage: recalled(2.5, 4.5), gravity: 0.42, gravityGround: 'from memory', strength: strong(10_700, 1.4, 1_500, 830, 'from memory') },
  { name: 'teak', also: [], shrinkage: recalled(2.5, 5.8), coefficient: recalled(0.00101, 0.00185), gravity: 0.55, gravityGround: 'read', strength: strong(14_600, 1.55, 1_890, 1_000),
    remark: 'the tangential coefficient was read in a flooring list; the radial one is from memory' },
];
