import type { Trouble } from '../work/troubles.ts';

/** What the trade does about it, short enough for the ear, and the sizes of the joint that belong to it. Common practice, no source. */
export interface Remedy {
  readonly say: string;
  /** By their names in the joint; `shoulders` is of the part that carries the tenon. */
  readonly figures?: readonly string[];
}

const CHEEKS = ['tenonThickness', 'mortiseWidth'];
const DEPTHS = ['tenonLength', 'mortiseDepth'];
const ENDS = ['tenonWidth', 'mortiseLength'];

export const REMEDIES: Readonly<Record<Trouble, Remedy>> = {
  'cup': { say: 'Wedge it so that it stands still. Across the grain with the jack plane, on what is high: both edges of the hollow side, or the ridge of the round one. Then along, with the jointer plane.' },
  'wind': { say: 'Two corners across from each other are high; winding sticks, one at each end, show which. Wedge it so that it stands still, traverse from one high corner to the other until the sticks agree, then along the grain.' },
  'bow': { say: 'Wedge it so that it does not give under the plane. Round side up, the middle comes off; hollow side up, the two ends. Then full length with the jointer plane.' },
  'hump': { say: 'Shavings from the middle only, stopping short of both ends, until the straightedge no longer rocks; then full length.' },
  'hollow': { say: 'What lies round it is high: across the grain at ends and edges with the jack plane, then along with the jointer plane, until the hollow just comes off.' },
  'high corners': { say: 'Two across from each other are wind: traverse from one to the other until the winding sticks agree. All four are a hollow: across the grain at both ends first. Then along the grain.' },
  'edge out of square': { say: 'Keep the plane level and shift it over to the high side, so that the iron cuts deepest there. Full length, until the square, stock against the reference face, shows no light.' },
  'tear-out': { say: 'Plane it from the other end. If both ways tear, hone the iron and take the finest shaving it will give; what is left comes off with a card scraper.' },
  'not flat': { say: 'The jack plane first, across the grain, on the high places; then on a slant; then the jointer plane along the grain, until the sticks agree and no light shows under the straightedge, along, across and corner to corner.' },
  'tenon loose': { say: 'Glue a thin piece of the same wood on one cheek, grain along the tenon, and pare it to its own mortise again. Glue alone fills no gap.', figures: CHEEKS },
  'tenon tight': { say: 'Driven home, it would split the wood round the mortise. See where it shines and pare there, the same off both cheeks, until it goes home by hand with a tap at the last.', figures: CHEEKS },
  'tenon short': { say: 'A little short does no harm: what counts is from shoulder to shoulder. If much is missing, saw it off and let a loose tenon into both, or make the part again.', figures: [...DEPTHS, 'shoulders'] },
  'tenon long': { say: 'Take its end back until the shoulder closes, with a little to spare at the bottom of the mortise.', figures: DEPTHS },
  'tenon wide': { say: 'Pare its edges until it goes in between the ends of the mortise. Only the cheeks hold the glue, so there it may be easy.', figures: ENDS },
  'tenon narrow': { say: 'Only the cheeks hold the glue, so it does little harm: mark where the part has to stand, for now it can slide. A slip glued into the end of the mortise stops that.', figures: ENDS },
  'tenon split': { say: 'Work glue into the split, clamp it across, and let it dry before it is pared. If it runs past the shoulder, a loose tenon takes its place, or the part is made again.' },
  'mortise wide': { say: 'Make its tenon to it: leave that one thicker. If it is sawn already, glue a thin piece on the cheek and pare it. Tell me how wide it came out, and what stands on it follows.', figures: CHEEKS },
  'mortise narrow': { say: 'Pare both walls upright to their lines with a wide chisel; or, if all came out so, pare the tenons to it.', figures: CHEEKS },
  'mortise long': { say: 'The shoulder covers a little. For more, glue a slip of the same wood into the end, grain along the part, and pare it to the line when it is dry.', figures: ENDS },
  'mortise short': { say: 'Pare its ends back to the lines, upright; or take as much off the edge of the tenon that is not the reference.', figures: ENDS },
  'mortise deep': { say: 'It only makes room for glue, as long as it does not break into another mortise or come near the far face.', figures: DEPTHS },
  'mortise shallow': { say: 'Chop on until the depth gauge agrees all along the bottom, or the shoulder stays open.', figures: DEPTHS },
  'mortise split': { say: 'Leave off chopping. Work thin glue into the split, clamp across it, and let it dry before the rest comes out; then lighter cuts, and the waste levered towards the middle only.' },
  'shoulder open': { say: 'If the tenon stands on the bottom, deepen the mortise; if something within the shoulder is proud, undercut it there, never at the line. Else saw along the closed joint, and as much off each shoulder that must agree.', figures: DEPTHS },
  'shoulder out of square': { say: 'Knife it again right round from face and edge, at its lowest place, and pare to that. Then the other end and the part across from it alike, or the frame goes out of square.', figures: ['shoulders'] },
  'cheek not flat': { say: 'Straightedge over it, and pare across the grain, from both edges to the middle, keeping to the gauge line. Leave it a whisker fat: it is fitted to its own mortise.', figures: CHEEKS },
  'wrong face': { say: 'See first whether it serves after all: the part in another place, or turned end for end. If not, glue in a piece of the same wood, grain along the part, and plane it flush when it is dry. Only then the right one.' },
  'end blown out': { say: 'Glue the chip back while the break is fresh, and tape it. If it is lost, square the place out and let in a slip, grain along the part. The shoulder covers a little.' },
  'frame out of square': { say: 'See that every shoulder is closed, then measure both diagonals and tell me: I say which way to pull. The clamps slant along the longer one until both agree.' },
  'side of the line': { say: 'On the waste side, so that the whole line stays on the work. Cheeks a whisker fat, for they are pared to the mortise; shoulders in a groove chiselled on the waste side of the knife line.' },
  'mortise or tenon first': { say: 'The mortise first: the chisel gives its width, and each tenon is then pared to its own mortise.' },
};
