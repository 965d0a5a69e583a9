/** How often an event (a low under a named threshold) was forecast and came. */
export interface ContingencyTable {
  readonly hits: number;
  readonly falseAlarms: number;
  readonly misses: number;
  readonly correctNegatives: number;
}

/**
 * Counts nights into a contingency table.
 * Units: yes or no for each night; counts.
 * Valid: any number of nights.
 * Outside: not applicable.
 * Source: definition (BoM-Verification, yes/no forecasts).
 */
export function contingencyTable(nights: readonly { readonly forecast: boolean; readonly observed: boolean }[]): ContingencyTable {
  const count = (forecast: boolean, observed: boolean): number => nights.filter((night) => night.forecast === forecast && night.observed === observed).length;
  return { hits: count(true, true), falseAlarms: count(true, false), misses: count(false, true), correctNegatives: count(false, false) };
}
