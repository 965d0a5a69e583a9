/** One thing to do, as data. Temperatures in K, times in epoch seconds. */
export type PlannedAction =
  | { readonly action: 'cover'; readonly target: string; readonly byS: number }
  | { readonly action: 'vents'; readonly target: 'shut'; readonly byS: number }
  | { readonly action: 'heater'; readonly setK: number | null; readonly fromS: number; readonly untilS: number }
  | { readonly action: 'harvest'; readonly target: string; readonly crop: string; readonly byS: number };

/** What the grower has decided or done for a night; everything else is left as it is. */
export interface NightChoices {
  /** Names of beds that are covered, and from when. */
  readonly covers: ReadonlyMap<string, number>;
  readonly ventsShutS: number | null;
  readonly heater: { readonly setK: number | null; readonly fromS: number; readonly untilS: number } | null;
}
