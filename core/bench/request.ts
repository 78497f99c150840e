import type { Length } from '../length/length.ts';
import type { Rounding } from '../length/rounding.ts';
import type { TimerKind } from '../clock/timer.ts';
import type { Care } from '../edge/upkeep.ts';
import type { EdgeName } from '../journal/edges.ts';
import type { Label } from '../glue/adhesive.ts';
import type { AirPlace, GluingMode, RestSeen } from '../journal/craft.ts';
import type { Arch } from '../faces/boards.ts';
import type { End, Face } from '../faces/face.ts';
import type { Level } from '../faces/levels.ts';
import type { Liking } from '../faces/likes.ts';
import type { SawingSettings } from '../journal/cutting.ts';
import type { Settings } from '../journal/settings.ts';
import type { FrameName } from '../layout/frames.ts';
import type { SheetChoice } from '../layout/paper/choice.ts';
import type { SizeName } from '../piece/measurement.ts';
import type { Board, Defect } from '../stock/board.ts';
import type { PartRough, Side } from '../stock/rough.ts';
import type { DefectKind } from '../stock/rack.ts';
import type { Asked, Spot, WantedReading } from '../true/guide.ts';
import type { BoardFace, ReadingKind } from '../true/readings.ts';
import type { Deed } from '../work/deeds.ts';
import type { StepId } from '../work/step.ts';
import type { Trouble } from '../work/troubles.ts';
import type { Screen } from './screen.ts';

/** Everything a person can ask or tell the bench. It never says where it came from. */
export type Request =
  | WorkRequest | HandworkRequest | SizeRequest | JointRequest | FaceRequest | ReckonRequest | RecordRequest | HistoryRequest | TimerRequests | LayoutRequest | PaperRequest | EdgeRequest | RackRequest | CutRequest | BuyRequest | AirRequest | TruingRequest | GluingRequest | KeepingRequest | TalkRequest | AnswerRequest;

/** The edges: cutting with them, caring for them. */
export type EdgeRequest =
  | { readonly kind: 'cutting begins'; readonly edge: EdgeName }
  | { readonly kind: 'cutting stops' }
  | { readonly kind: 'edge care'; readonly edge?: EdgeName; readonly care: Care }
  | { readonly kind: 'how is the edge'; readonly edge?: EdgeName }
  | { readonly kind: 'does honing pay'; readonly minutesLeft: number }
  | { readonly kind: 'guide projection'; readonly angleDegrees: number }
  | { readonly kind: 'guide angle'; readonly projection: Length };

export type WorkRequest =
  | { readonly kind: 'where am I' }
  | { readonly kind: 'next step' }
  | { readonly kind: 'step back' }
  | { readonly kind: 'step done' }
  /** A part or joint, or all of its copies, is done: the step is, when it is about just that. `by`: what was done to it, and the step must be of that. */
  | { readonly kind: 'made'; readonly owner: string; readonly copy?: number; readonly all?: true; readonly by?: Deed }
  | { readonly kind: 'skip step' }
  | { readonly kind: 'reopen step' }
  | { readonly kind: 'go to step'; readonly step: StepId }
  /** `time`: how long it will take, as far as that is known. */
  | { readonly kind: 'what is left'; readonly time?: true }
  /** A coat of the finish is on: the one that was counted, else the one that the step is about. */
  | { readonly kind: 'coat on'; readonly coat?: number }
  /** `only`: of its tools those. `about`: the check of that work, at this step or the next that has it. */
  | { readonly kind: 'tell the step'; readonly what: 'in full' | 'tools' | 'check' | 'cautions' | 'sizes' | 'what to record'; readonly only?: 'plane' | 'saw'; readonly about?: 'flat' | 'square' | 'fit' }
  /** `front` is the face that looks to the front of the piece; of a rail, outwards. */
  | { readonly kind: 'place'; readonly part: string; readonly copy: number; readonly place: string; readonly front?: Face; readonly up?: End; readonly sure?: true };

/** What is asked of the handwork: without a part, of the one at hand, else of all. */
export type HandworkRequest =
  /** At the step at hand: what of it is asked. */
  | { readonly kind: 'what goes wrong' }
  | { readonly kind: 'trouble'; readonly about: Trouble; readonly joint?: string; readonly of?: SideMeant; /** How much it is out. */ readonly gap?: Length }
  | { readonly kind: 'reference sides'; readonly part?: string; readonly copy?: number }
  /** How far the arrises are eased. */
  | { readonly kind: 'easing'; readonly part?: string };

export type SizeRequest =
  | { readonly kind: 'size'; readonly size: SizeName; readonly copy?: number }
  | { readonly kind: 'sizes of part'; readonly part: string; readonly copy?: number }
  | { readonly kind: 'why'; readonly size: SizeName; readonly copy?: number }
  /** `pieces`: the layers or boards that one is glued up from. */
  | { readonly kind: 'how many'; readonly part: string; readonly pieces?: true }
  /** The whole of it: what it is and how big, or what parts it has. */
  | { readonly kind: 'the piece'; readonly what: 'sizes' | 'parts' }
  /** Of a part; without one, of the whole piece. */
  | { readonly kind: 'what wood'; readonly part?: string }
  | { readonly kind: 'what moved' }
  | { readonly kind: 'what no longer fits' };

/** About joints and their marks; without a joint or part, those of the current step are meant. */
export type JointRequest =
  /** `faces`: only which of them are mortised. */
  | { readonly kind: 'marks'; readonly part?: string; readonly copy?: number; readonly only?: 'faces' }
  /** `haunch`: how far down its socket lies, and how deep it is. */
  | { readonly kind: 'marks of joint'; readonly joint: string; readonly side: 'mortise' | 'tenon'; readonly only?: 'start' | 'end' | 'haunch' | 'shoulders' }
  /** One face of a part, drawn with its marks; without a part, of what is on the screen or at the step. */
  | { readonly kind: 'layout face'; readonly part?: string; readonly copy?: number; readonly to?: 'next' | 'back' | 'next copy' | Face }
  | { readonly kind: 'how deep'; readonly joint?: string }
  | { readonly kind: 'which chisel'; readonly joint?: string }
  | { readonly kind: 'how to chop'; readonly joint?: string }
  | { readonly kind: 'longest tenon'; readonly joint: string }
  | { readonly kind: 'how strong'; readonly joint: string }
  | { readonly kind: 'joint by the book'; readonly joint: string }
  | { readonly kind: 'foot bevel'; readonly part?: string; readonly shaving?: Length }
  /** A chamfer or bevel along any arris, by how far back it runs on each face. */
  | { readonly kind: 'bevel'; readonly setback: Length; readonly otherSetback?: Length; readonly shaving?: Length }
  /** The chopping of a mortise, drawn stage by stage; the step stays where it is. `here` is where the maker left off. */
  | { readonly kind: 'chop stage'; readonly to: 'here' | 'first' | 'next' | 'back' | number; readonly joint?: string };

/** Which way the copies of a part face; without a part, the one on the screen or at the step, or the only one that it can be. */
export type FaceRequest =
  | { readonly kind: 'like faces'; readonly part: string; readonly copy: number; readonly likings: readonly Liking[] }
  | { readonly kind: 'like end'; readonly part: string; readonly copy: number; readonly what: 'up' | 'arch'; readonly end: End | 'either' }
  | { readonly kind: 'like board'; readonly part?: string; readonly board: number; readonly arch: Arch | 'either' }
  | { readonly kind: 'board arches'; readonly part?: string }
  | { readonly kind: 'faces of'; readonly part: string; readonly copy: number }
  | { readonly kind: 'place them'; readonly part?: string }
  | { readonly kind: 'second best'; readonly part?: string }
  /** Where each copy stands, and how they are told apart. */
  | { readonly kind: 'which is which'; readonly part?: string }
  /** Two copies change places; `sure` once the maker was told what it undoes. */
  | { readonly kind: 'change over'; readonly part: string; readonly copy: number; readonly with: number; readonly sure?: true }
  /** `sure`: said again, after being told what it undoes. */
  | { readonly kind: 'take placing'; readonly part?: string; readonly sure?: true }
  /** What counts first when they are placed: told, or changed. */
  | { readonly kind: 'what counts'; readonly part?: string; readonly change?: 'usual' | { readonly level: Level; readonly before?: Level } };

/** What arithmetic can be asked for; a size may stand wherever a length may. */
export type Operand = { readonly length: Length } | { readonly size: SizeName; readonly copy?: number } | { readonly lastAnswer: true };
export type ReckonRequest =
  | { readonly kind: 'fraction of'; readonly numerator: number; readonly denominator: number; readonly of: Operand }
  | { readonly kind: 'times'; readonly factor: number; readonly of: Operand }
  | { readonly kind: 'plus'; readonly left: Operand; readonly right: Operand }
  | { readonly kind: 'less'; readonly left: Operand; readonly right: Operand }
  /** `parts` equal spaces; with `each`, n parts of that size and the n-1 gaps between them. */
  | { readonly kind: 'equal spaces'; readonly of: Operand; readonly spaces: number }
  | { readonly kind: 'equal gaps'; readonly of: Operand; readonly parts: number; readonly each: Operand }
  | { readonly kind: 'in other unit'; readonly of: Operand; readonly unit: Rounding['unit'] }
  /** Counted in fractions of an inch: how many sixteenths it is. */
  | { readonly kind: 'in fractions'; readonly of: Operand; readonly denominator: number };

export type RecordRequest =
  | { readonly kind: 'record'; readonly size: SizeName; readonly copy?: number; readonly length: Length; /** Said so that it may be how much it is over: 'a thirty second wide'. */ readonly orOver?: true; /** Said again, after being asked whether it is really so. */ readonly sure?: true; /** And after being asked whether that copy is meant. */ readonly copySure?: true }
  /** Measured against what it should be: so much more, or less. */
  | { readonly kind: 'record off'; readonly size: SizeName; readonly copy?: number; readonly off: Length }
  /** Told to be off, without how much: what it measures is asked. */
  | { readonly kind: 'off somehow'; readonly size: SizeName; readonly copy?: number }
  | { readonly kind: 'withdraw measurement'; readonly size: SizeName; readonly copy?: number }
  | { readonly kind: 'note'; readonly text: string }
  /** What a caliper or a tape gauge typed, as it stands: '82.55', '+3.2500 in'. */
  | { readonly kind: 'reading'; readonly text: string };

/** What was written down so far. */
export type HistoryRequest =
  /** What the journal holds: the last of it, today's, that of the last day of work before today, or the notes. */
  | { readonly kind: 'what was done'; readonly when: 'last' | 'today' | 'before today' | 'notes' }
  /** What was measured: all of it (of one part or copy, when it is named), the last of it, or only what is off by more than the general tolerances. */
  | { readonly kind: 'what was measured'; readonly which: 'all' | 'last' | 'off'; readonly part?: string; readonly copy?: number };

export type TimerRequests =
  /** `unlessNew`: what is told twice, that the clamps are on, starts no second clock. */
  | { readonly kind: 'start timer'; readonly timer: TimerKind; readonly name?: string; readonly durationMs?: number; readonly unlessNew?: true }
  | { readonly kind: 'start step timer' }
  /** Until the next coat, or until the last one has cured. */
  | { readonly kind: 'finish clock'; readonly which: 'recoat' | 'cure'; readonly durationMs?: number }
  | { readonly kind: 'coats' }
  /** `run`: how long it has run, too. */
  | { readonly kind: 'time left'; readonly timer?: number; readonly run?: true }
  /** The time of day. */
  | { readonly kind: 'what time' }
  | { readonly kind: 'change timer'; readonly timer?: number; readonly addMs: number }
  | { readonly kind: 'hold timer'; readonly timer?: number }
  | { readonly kind: 'resume timer'; readonly timer?: number }
  | { readonly kind: 'stop timer'; readonly timer?: number }
  | { readonly kind: 'acknowledge'; readonly timer?: number };

/** What the diagonals were taken of; `unsaid` is the frame of the piece, when it has one. */
export type Measured = { readonly unsaid: true } | { readonly frame: FrameName } | { readonly part: string };
export type LayoutRequest =
  | { readonly kind: 'diagonals'; readonly of: Measured; readonly first: Length; readonly second: Length }
  /** What they should be. */
  | { readonly kind: 'what diagonals'; readonly of: Measured }
  /** How far off a size may come out; with a target, how true each part must be for it. */
  | { readonly kind: 'tolerance'; readonly size: SizeName; readonly copy?: number; readonly target?: Length }
  | { readonly kind: 'gauges'; readonly what: 'how they stand' | 'for this step' | 'order' }
  | { readonly kind: 'gauges'; readonly what: 'for a joint'; readonly joint: string; readonly side: 'mortise' | 'tenon' };

/** Sheets at full size; without a choice, those on the screen. */
export type PaperRequest =
  | { readonly kind: 'sheets'; readonly sheet?: SheetChoice }
  | { readonly kind: 'print sheets'; readonly sheet?: SheetChoice }
  | { readonly kind: 'save sheets'; readonly sheet?: SheetChoice }
  /** What a bar of the print measures; without a direction, both are taken to be alike. */
  | { readonly kind: 'print scale'; readonly across?: Length; readonly upright?: Length };

/** Boards on the rack; without a number, the board on the screen or the one told of last. */
export type RackRequest =
  /** A board told whole, or one by that number told anew. */
  | { readonly kind: 'put board'; readonly board: Board }
  | { readonly kind: 'new board'; readonly length: Length; readonly width: Length; readonly farWidth?: Length; readonly thickness?: Length; readonly species?: string }
  | { readonly kind: 'board is'; readonly board?: number; readonly change: BoardChange }
  /** Across the whole board unless it is told from where to where. */
  | { readonly kind: 'board defect'; readonly board?: number; readonly what: DefectKind; readonly from: Length; readonly to: Length; readonly fromEdge?: Length; readonly toEdge?: Length; readonly face?: Defect['face'] }
  /** Told without where it begins and where it ends. */
  | { readonly kind: 'defect without ends'; readonly what: DefectKind }
  /** Of what was told last of the board: where across it lies, or on which face alone it shows. */
  | { readonly kind: 'narrow defect'; readonly board?: number; readonly narrowed: Partial<Pick<Defect, 'fromEdge' | 'toEdge' | 'face'>> }
  | { readonly kind: 'board used up'; readonly board?: number }
  | { readonly kind: 'how many boards' }
  /** That there are new boards, without a size of any. */
  | { readonly kind: 'boards came' }
  /** By the trade's rounding. */
  | { readonly kind: 'board feet'; readonly board?: number | 'all' }
  | { readonly kind: 'save boards' }
  | { readonly kind: 'tell board'; readonly board: number }
  /** A table of boards, as RFC 4180 has it. */
  | { readonly kind: 'take in boards'; readonly text: string; readonly from: string };
export type BoardChange = Partial<Pick<Board, 'length' | 'width' | 'farWidth' | 'thickness' | 'species' | 'sapwood' | 'grain' | 'pithSide' | 'colour'>>;

/** The cutting plan, and cutting by it. */
export type CutRequest =
  | { readonly kind: 'plan cutting' }
  | { readonly kind: 'stop planning' }
  | { readonly kind: 'take plan' }
  | { readonly kind: 'how good is the plan' }
  /** As a table: which part from where on which board, in the order of the cuts. */
  | { readonly kind: 'save plan' }
  | { readonly kind: 'next cut'; readonly board?: number }
  | { readonly kind: 'where on board'; readonly board?: number }
  | { readonly kind: 'read cuts'; readonly board?: number }
  /** From which boards a part is cut; without a part, what comes from each. */
  | { readonly kind: 'which boards'; readonly part?: string }
  | { readonly kind: 'cut made'; readonly board?: number }
  | { readonly kind: 'set sawing'; readonly setting: Partial<SawingSettings> }
  /** Of one side alone, or of all three. */
  | { readonly kind: 'rough size'; readonly part: string; readonly side?: Side }
  /** What is left on everything that is cut in the rough. */
  | { readonly kind: 'allowances' }
  | { readonly kind: 'part rough'; readonly part: string; readonly rough: PartRough };

/** What the rack lacks, and boards at the yard. */
export type BuyRequest =
  | { readonly kind: 'what to buy'; readonly about?: 'enough' | 'cost' }
  /** How thick the boards must be, and what is cut from each; of one thickness, what it comes to in inches. */
  | { readonly kind: 'board thickness'; readonly thickness?: Length }
  | { readonly kind: 'does it help'; readonly length: Length; readonly width: Length; readonly thickness?: Length }
  | { readonly kind: 'bought' };

/** Wood and air: what is told of them, and what follows. */
export type AirRequest =
  /** From the maker, or from a sensor. */
  | { readonly kind: 'air'; readonly place: AirPlace; readonly tempC?: number; readonly humidityPercent?: number; readonly by: 'said' | 'sensor' }
  | { readonly kind: 'stock moisture'; readonly percent: number }
  /** What was told of shop, wood, glue and stock. */
  | { readonly kind: 'what air' }
  | { readonly kind: 'wood in this air' }
  /** At what was told of it, or at a percent that is asked about. */
  | { readonly kind: 'is the stock ready'; readonly percent?: number }
  | { readonly kind: 'how dry must it be' }
  | { readonly kind: 'how long to rest' }
  | { readonly kind: 'top in a year'; readonly part?: string }
  | ({ readonly kind: 'rest seen' } & RestSeen)
  | { readonly kind: 'is it settled'; readonly part: string; readonly copy?: number }
  | { readonly kind: 'glue tonight' }
  /** How long the clamps stay on, or how long the glue stays open, by its label and the cold. */
  | { readonly kind: 'glue time'; readonly which: 'clamp' | 'open time' }
  | { readonly kind: 'label'; readonly label: Partial<Label> }
  | { readonly kind: 'how many clamps' }
  | { readonly kind: 'how long to warm' };

/** The side of a board that is meant; what is not said is that on the screen or at the step. */
export type SideMeant = Partial<BoardFace>;
/** Which way a gap goes: the end of the stick or the shape that is high, or the side of the square where light shows. */
export type GapSense = 'left' | 'right' | 'hollow' | 'crowned' | 'far side' | 'face side';
/** What the guide was after when it asked, and what was left out on the way. */
export interface Guided {
  readonly about: Asked;
  readonly leftOut: readonly WantedReading[];
}
export type TruingRequest =
  /** The guide asks for one reading after the other. */
  | { readonly kind: 'read side'; readonly of: SideMeant; readonly about?: 'thickness' | 'diagonals' }
  /** `sure` once the maker was asked whether it is really so much. */
  | { readonly kind: 'surface reading'; readonly of: SideMeant; readonly what: ReadingKind; readonly at: Spot; readonly gap: Length; readonly sense?: GapSense; readonly guided?: Guided; readonly sure?: true }
  | { readonly kind: 'leave out reading' }
  | { readonly kind: 'other side'; readonly of: SideMeant }
  | { readonly kind: 'surface planed'; readonly of: SideMeant }
  | { readonly kind: 'what to plane'; readonly of: SideMeant }
  | { readonly kind: 'is it flat'; readonly of: SideMeant }
  | { readonly kind: 'thickness left'; readonly of: SideMeant }
  | { readonly kind: 'will they close'; readonly of: SideMeant };

/** The rehearsal and the glue-up, move by move. */
export type GluingRequest =
  /** `sure` once the maker was told that it was not rehearsed. */
  | { readonly kind: 'begin gluing'; readonly mode: GluingMode; readonly sure?: true }
  /** Whether it may begin: at the glue-up of this step, else at the next one. */
  | { readonly kind: 'ready to glue' }
  | { readonly kind: 'next move' }
  | { readonly kind: 'leave gluing' }
  | { readonly kind: 'divide gluing' };

export type KeepingRequest =
  | { readonly kind: 'scratch that' }
  | { readonly kind: 'put back' }
  | { readonly kind: 'load piece'; readonly text: string; readonly from: string }
  /** The piece as a file, with what was told of its parts, the rack and its cutting plan. */
  | { readonly kind: 'save piece' }
  /** A backup of everything takes the place of what is on the bench; `sure` once the maker has been told what that costs. */
  | { readonly kind: 'take in everything'; readonly text: string; readonly sure?: true }
  | { readonly kind: 'set'; readonly setting: Partial<Settings> };

export type TalkRequest =
  | { readonly kind: 'say again'; readonly how: 'as before' | 'slower' | 'digit by digit' }
  /** Through what is told piece by piece. */
  | { readonly kind: 'tell in turn'; readonly to: 'next' | 'back' | 'first' | 'enough' }
  | { readonly kind: 'louder' }
  | { readonly kind: 'quieter' }
  | { readonly kind: 'be quiet' }
  /** Here, or on the screen of what is asked about. */
  | { readonly kind: 'what can I say'; readonly about?: Screen }
  | { readonly kind: 'show'; readonly screen: Screen }
  /** Said so that several things could be meant. */
  | { readonly kind: 'which'; readonly choices: readonly { readonly say: string; readonly request: Request }[] }
  /** Words that mean nothing here; `nearest` is what could be asked instead. */
  | { readonly kind: 'not understood'; readonly heard: string; readonly because: string; readonly nearest?: string };

/** Only with an open question; a whole request is always taken instead of an answer. */
export type AnswerRequest =
  | { readonly kind: 'yes' }
  | { readonly kind: 'no' }
  | { readonly kind: 'choose'; readonly index: number }
  | { readonly kind: 'answer length'; readonly length: Length }
  | { readonly kind: 'answer reading'; readonly length: Length; readonly sense?: GapSense }
  /** The way first; how much is asked then. */
  | { readonly kind: 'answer sense'; readonly sense: GapSense };
