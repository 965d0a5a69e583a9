/** What a message means, as data. The kinds and their fields are a contract with the outside. */

export type Units = 'C' | 'F';
export type Statistic = 'now' | 'low' | 'high';

/** What a house can have, and what can be done with it on a night. */
export const ITEMS = ['cover', 'curtain', 'heater', 'fan', 'vents', 'water', 'stones', 'layer', 'film', 'wall', 'tube', 'compost', 'harvest'] as const;
export type Item = (typeof ITEMS)[number];

export type Topic = 'cover' | 'fan' | 'heater' | 'vents' | 'harvest';
export type ConditionItem = 'snow' | 'power-out' | 'blower-off' | 'torn-film' | 'door-open' | 'fuel-out' | 'fan-dead';
export type OutcomeState = 'fine' | 'marked' | 'dead';

/** `null` where the grower said a bare number whose measure cannot be known, such as a step of a dial. */
export type AmountUnit = 'C' | 'count' | 'litre' | 'kilogram' | 'watt' | 'metre' | 'gram-per-m2' | 'micrometre' | 'hour' | 'percent' | 'money' | null;

export interface Amount {
  readonly value: number;
  readonly unit: AmountUnit;
}

export type Amounts = Readonly<Partial<Record<Item, Amount>>>;

export interface Reading {
  readonly c: number;
  readonly stat: Statistic;
  /** inside, outside, cover, soil, water, stones, tube, or a thermometer's own name. */
  readonly place?: string;
  /** Whether the thermometer stood in the sun, where that was said. */
  readonly sun?: boolean;
  /** Local, with offset; absent: when the message came. */
  readonly at?: string;
}

/** What would be asked back. */
export type Ask =
  | 'what'
  | 'which-unit'
  | 'which-sign'
  | 'which-number'
  | 'which-stat'
  | 'which-time'
  | 'which-place'
  | 'which-crop'
  | 'which-state'
  | 'which-night'
  | 'which-item'
  | 'which-meaning'
  | 'which-reading'
  | 'done-yet'
  | 'impossible-temperature';

export interface Unclear {
  readonly kind: 'unclear';
  readonly asks: Ask;
  /** The word or number that is not understood, as it was written. */
  readonly word?: string;
  /** The answers to choose from: units, numbers, crop ids, dates, instants or kinds of intent. */
  readonly choices?: readonly string[];
}

/** What the grower asks for that has no fields of its own. */
export type PlainKind = 'next' | 'why' | 'record' | 'history' | 'settings' | 'help' | 'start' | 'stop' | 'erase' | 'export' | 'chat';

/** One thing that is meant. */
export type Meaning =
  | { readonly kind: 'reading'; readonly readings: readonly Reading[] }
  /** `unit`: what was sent last was meant in it. Without all of these it withdraws the last reading. */
  | { readonly kind: 'fix'; readonly c?: number; readonly stat?: Statistic; readonly place?: string; readonly unit?: Units }
  | { readonly kind: 'crop'; readonly crop: string; readonly night: string }
  | { readonly kind: 'crop'; readonly crops: readonly string[]; readonly night: string }
  | { readonly kind: 'outcome'; readonly crop: string; readonly bed?: string; readonly state: OutcomeState; readonly night?: string }
  | { readonly kind: 'advice'; readonly topic?: Topic }
  | { readonly kind: 'outlook'; readonly place?: string; readonly night?: string; readonly span?: { readonly nights: number } }
  | { readonly kind: 'suppose'; readonly items?: readonly Item[]; readonly without?: readonly Item[]; readonly amounts?: Amounts }
  /**
   * What stands as it should for a cold night (covers on, vents shut, heater on), and what does not.
   * Without lists: the whole plan is done. An empty `done`: nothing is. `rest`: all of the plan but what is in `not`. `words`: what of the message tells it, where it tells more.
   */
  | { readonly kind: 'did'; readonly done?: readonly Item[]; readonly not?: readonly Item[]; readonly rest?: true; readonly amounts?: Amounts; readonly words?: string; /** Where another night than the one to come was said. */ readonly night?: string }
  | { readonly kind: 'condition'; readonly items: readonly ConditionItem[]; readonly on: boolean }
  | { readonly kind: 'mark'; readonly text: string; readonly items?: readonly Item[]; readonly amounts?: Amounts; readonly at: string }
  | { readonly kind: 'effect'; readonly items?: readonly Item[] }
  | { readonly kind: PlainKind }
  | Unclear;

export type IntentKind = Meaning['kind'];

/** What a message means. Of several things the first is what must not be lost (a reading before a deed before a question); the rest are in `also`. */
export type Intent = Meaning & { readonly also?: readonly Meaning[] };

/** The things that a message means, each as an intent of its own, in the order in which they are to be done. */
export function meanings({ also, ...first }: Intent): readonly Meaning[] {
  return [first, ...(also ?? [])];
}

export function unclear(asks: Ask, more: { readonly word?: string; readonly choices?: readonly string[] } = {}): Unclear {
  return { kind: 'unclear', asks, ...more };
}
