/** A bed of one crop: worth in money, and where damage begins and the plant is killed. */
export interface Bed {
  readonly name: string;
  readonly worth: number;
  readonly beginsC: number;
  readonly killedC: number;
}

/** Beds of the decision reference of this project (section 1.8): test constants, not facts of horticulture. Harder ones for the winters that freeze. */
export const BEDS: readonly Bed[] = [
  { name: 'tomato', worth: 120, beginsC: 0, killedC: -1.5 },
  { name: 'lettuce', worth: 80, beginsC: -1, killedC: -3 },
  { name: 'chard', worth: 80, beginsC: -4, killedC: -7 },
  { name: 'kale', worth: 60, beginsC: -6, killedC: -10 },
];
