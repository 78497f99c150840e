/** One joint that is glued: a tenon in its mortise, or two boards edge to edge. */
export interface GlueJoint {
  /** Stable: 'shortRail/1 in leg/3', 'board 2 to board 3'. */
  readonly id: string;
  /** For the ear and the eye: 'short rail one into the front left leg'. */
  readonly say: string;
  /** What it holds together: what carries the tenon, and what it goes into; of boards, one and the next. */
  readonly joins: readonly [string, string];
}

/** What is pressed by one clamp or one pair of clamps: 'short rail one'. */
export interface Clamping {
  readonly say: string;
  /** Joints that it closes. */
  readonly joints: readonly string[];
}

/** Everything of one glue-up, in the order in which it goes together. */
export interface GlueUpPlan {
  /** The step it belongs to. */
  readonly step: string;
  readonly name: string;
  readonly joints: readonly GlueJoint[];
  readonly clampings: readonly Clamping[];
  readonly kind: 'frame' | 'panel' | 'stack';
}

export type MoveKind = 'set out' | 'spread' | 'close' | 'clamp' | 'check' | 'squeeze-out';

/** One thing to do, told one at a time. */
export interface Move {
  readonly kind: MoveKind;
  readonly say: string;
  /** Joints that it is about; empty for what is done once. */
  readonly joints: readonly string[];
}

/** Whether the clock of the glue runs during the move: from the first spreading until the checks are done. */
export function onTheClock({ kind }: Pick<Move, 'kind'>): boolean {
  return kind !== 'set out' && kind !== 'squeeze-out';
}

/** What to do, in order, for these joints of a plan (all of them when none are given). A frame is closed joint by joint, boards all together. */
export function movesOf(plan: GlueUpPlan, joints: readonly string[] = plan.joints.map(({ id }) => id)): readonly Move[] {
  const chosen = plan.joints.filter(({ id }) => joints.includes(id));
  const clampings = plan.clampings.filter((clamping) => clamping.joints.some((id) => joints.includes(id)));
  return [
    { kind: 'set out', say: setOutOf(plan), joints: [] },
    ...(plan.kind === 'frame' ? frameMoves(chosen) : boardMoves(chosen, plan.kind)),
    ...clampings.map((clamping): Move => ({ kind: 'clamp', say: `Clamp across ${clamping.say}, until the ${plan.kind === 'frame' ? 'shoulders close' : 'bead shows all along'}.`, joints: clamping.joints.filter((id) => joints.includes(id)) })),
    { kind: 'check', say: checkOf(plan.kind), joints: [] },
    { kind: 'squeeze-out', say: 'Leave the squeeze-out until it is like rubber, and scrape it then.', joints: [] },
  ];
}

function setOutOf({ kind }: GlueUpPlan): string {
  const open = 'clamps opened to size, cauls waxed or covered, brush, mallet and rag in reach';
  return kind === 'frame' ? `Set out: parts in their order with joints numbered, ${open}, rods for the diagonals.` : `Set out: boards in their order, triangle up, ${open}, straightedge.`;
}

function frameMoves(joints: readonly GlueJoint[]): readonly Move[] {
  return joints.flatMap(({ id, say }): Move[] => [
    { kind: 'spread', say: `Glue on ${say}: mortise walls first, a thin film on the cheeks.`, joints: [id] },
    { kind: 'close', say: `Drive home ${say}.`, joints: [id] },
  ]);
}

function boardMoves(joints: readonly GlueJoint[], kind: 'panel' | 'stack'): readonly Move[] {
  return [
    ...joints.map(({ id, say }): Move => ({ kind: 'spread', say: `Glue on ${say}.`, joints: [id] })),
    { kind: 'close', say: kind === 'panel' ? 'Rub the edges together, and bring the faces level from one end.' : 'Lay the stack up in its order, and line up the edges.', joints: joints.map(({ id }) => id) },
  ];
}

function checkOf(kind: GlueUpPlan['kind']): string {
  return kind === 'frame' ? 'Compare the diagonals, and sight across for wind. Slant a clamp until they agree.'
    : kind === 'panel' ? 'Straightedge across the faces. Tap the boards level.' : 'Look at the edges: nothing has slid, and a bead shows all round.';
}
