import type { GreenhouseFile } from '../../../engine/index.js';
import type { Quantity } from '../../language/house/clause.js';
import type { Fact, ShapeSaid } from '../../language/house/house-fact.js';
import type { FoundPlace } from '../../ports.js';
import type { PlainLength } from './file-quantities.js';
import type { Habits } from './units-of-place.js';

/** The version of the state's form; another one cannot be gone on with. */
export const DESCRIBE_VERSION = 1;

/** What is asked, in this order: the first three make the first advisory, the rest can each be skipped. */
export const TOPICS = ['place', 'size', 'layers', 'covers', 'water', 'soil', 'air', 'compost', 'heater', 'crops', 'thermometers', 'evening', 'units'] as const;
export type Topic = (typeof TOPICS)[number];
/** A line of the summary: a topic that is asked, or the things that are only noted when somebody speaks of them. */
export type Line = Topic | 'other';
export const FIRST_TOPICS = ['place', 'size', 'layers'] as const satisfies readonly Topic[];

/** What of a topic is asked; "all" is its opening question. */
export type Detail =
  | 'all'
  | 'choice'
  | 'height' | 'height-shape' | 'shape' | 'side' | 'plain-unit' | 'likely-height'
  | 'count' | 'weight' | 'each' | 'amount'
  | 'length' | 'airflow' | 'battery'
  | 'volume' | 'started'
  | 'fuel' | 'flue' | 'power' | 'candles' | 'safety'
  | 'hardiness' | 'which-bed'
  | 'hang'
  | 'area' | 'depth' | 'curtain-kind' | 'glazed'
  /** Waits for the place, and is never asked. */
  | 'place-first';

export interface Ask {
  readonly topic: Topic;
  readonly detail: Detail;
}

/** Size as it was said; it goes into the file once all of it is known and its unit is sure. */
export interface SizeDraft {
  readonly width?: Quantity;
  readonly length?: Quantity;
  readonly height?: Quantity;
  readonly side?: Quantity;
  readonly shape?: ShapeSaid;
  /** What plain numbers are in, once the grower has said so. */
  readonly plain?: PlainLength;
  /** The side wall was asked for and is not known. */
  readonly sideSkipped?: boolean;
}

export interface Thermometer {
  readonly name: string;
  readonly place: NonNullable<NonNullable<GreenhouseFile['thermometers']>[number]['place']>;
  readonly bed?: string;
  readonly heightM: number | null;
  /** Null where it was not said. */
  readonly sunlit: boolean | null;
}

/** Something that was said but lacks what the file needs. `parked`: asked for and not known; kept, in case it is said later. */
export interface Pending {
  readonly fact: Fact;
  readonly parked: boolean;
}

/** A greenhouse file as far as it goes. */
export type DraftFile = { -readonly [K in keyof GreenhouseFile]?: GreenhouseFile[K] };

export interface DescribeState {
  readonly version: typeof DESCRIBE_VERSION;
  /** A first description, or a change to a greenhouse that is known. */
  readonly mode: 'set-up' | 'change';
  readonly asking: Ask | null;
  readonly told: Partial<Readonly<Record<Topic, 'told' | 'none' | 'skipped'>>>;
  readonly file: DraftFile;
  readonly size: SizeDraft;
  readonly pending: readonly Pending[];
  readonly thermometers: readonly Thermometer[];
  /** What the town is called, for reading back. */
  readonly placeName: string | null;
  /** Null while the place is not known. */
  readonly habits: Habits | null;
  /** Places to choose from. */
  readonly choices: readonly FoundPlace[];
  /** A town that is being looked up. */
  readonly looking: string | null;
  /** Topics that have been understood but not yet read back, because a town is being looked up. */
  readonly owed: readonly Line[];
  /** The first three things were complete once: the first advisory has been announced. */
  readonly announced: boolean;
  readonly paused: boolean;
  /** Asked whether to forget all and begin anew. */
  readonly restarting: boolean;
  /** A cover was said to be for all beds, whichever they are. */
  readonly coversAll: boolean;
  /** How the thermometers hang was asked once. */
  readonly hangAsked: boolean;
  /** The safety words were shown and not acknowledged. */
  readonly safetyDeclined: boolean;
  /** Times in a row that an answer was not understood. */
  readonly missed: number;
  /** A known house before what is being told changed it, so that one word takes all of it back. */
  readonly changed: { readonly version: number; readonly before: string; readonly sinceS: number } | null;
}

/** What is known of a greenhouse and has no room in its file. */
export interface Beside {
  readonly placeName?: string | null;
  /** Things that were said and lack something. */
  readonly pending?: readonly Pending[];
}

export const besideOf = ({ placeName, pending }: DescribeState): Beside => ({ placeName, pending });

export const FRESH: DescribeState = {
  version: DESCRIBE_VERSION, mode: 'set-up', asking: null, told: {}, file: {}, size: {}, pending: [], thermometers: [], placeName: null, habits: null, choices: [], looking: null, owed: [], announced: false, paused: false, restarting: false, coversAll: false, hangAsked: false, safetyDeclined: false, missed: 0, changed: null,
};

export const writeState = (state: DescribeState): string => JSON.stringify(state);

/** The state from its JSON text; null where there is none, or one of another version: then it begins anew. */
export function readState(text: string | null): DescribeState | null {
  if (text === null) return null;
  try {
    const found = JSON.parse(text) as Partial<DescribeState> | null;
    return found !== null && found.version === DESCRIBE_VERSION && typeof found.file === 'object' && Array.isArray(found.pending) ? { ...FRESH, ...found } : null;
  } catch {
    return null;
  }
}
