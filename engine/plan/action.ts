import type { FanPlace } from '../night/controls.js';

/** One thing to do, as data. Temperatures in K, times in epoch seconds. */
export type PlannedAction =
  | { readonly action: 'cover'; readonly target: string; readonly byS: number }
  | { readonly action: 'vents'; readonly target: 'shut'; readonly byS: number }
  | { readonly action: 'curtain'; readonly target: 'draw'; readonly byS: number }
  | { readonly action: 'fan'; readonly target: FanPlace; readonly run: boolean; readonly fromS: number; readonly untilS: number }
  | { readonly action: 'heater'; readonly setK: number | null; readonly fromS: number; readonly untilS: number }
  | { readonly action: 'harvest'; readonly target: string; readonly crop: string; readonly byS: number };

/** What keeps cold from crops; vents are shut and fans switched by the way. */
export const PROTECTING_ACTIONS: ReadonlySet<string> = new Set<PlannedAction['action']>(['cover', 'curtain', 'heater', 'harvest']);

/** From when until when something runs. */
export interface Span {
  readonly fromS: number;
  readonly untilS: number;
}

/** What the grower has decided or done for a night; everything else is left as it is. */
export interface NightChoices {
  /** Names of beds that are covered, and from when. */
  readonly covers: ReadonlyMap<string, number>;
  readonly ventsShutS: number | null;
  readonly curtainFromS: number | null;
  /** Fans that run for a while; null stops one that stands switched on. */
  readonly fans: ReadonlyMap<FanPlace, Span | null>;
  readonly heater: (Span & { readonly setK: number | null }) | null;
}

/** Nothing changed: everything stays as it stands. */
export const NO_CHOICES: NightChoices = { covers: new Map(), ventsShutS: null, curtainFromS: null, fans: new Map(), heater: null };
