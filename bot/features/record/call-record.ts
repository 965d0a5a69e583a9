import type { PastNight } from './past-nights.js';

/** Nights of one kind: how many, on how many something would have been marked with nothing done, and on how many by the chances that were given. */
export interface NeedCount {
  readonly nights: number;
  readonly needed: number;
  readonly expected: number;
}

export interface CallRecord {
  readonly called: NeedCount;
  readonly quiet: NeedCount;
}

/** Whether calls were needed, by the low inside that was read: what it was off by, the plants would have been off by too. */
export function callRecord(nights: readonly PastNight[]): CallRecord {
  const judged = nights.flatMap(({ call, reads }) => {
    const read = reads.find(({ place, judged, compares }) => place === 'inside' && judged === 'good' && compares);
    if (call === null || read === undefined || read.said === null) return [];
    const offC = read.tempC - read.said.q50;
    return [{ ...call, needed: call.crops.some(({ lowC, marksFromC }) => lowC + offC < marksFromC) }];
  });
  const countOf = (called: boolean): NeedCount => {
    const some = judged.filter((night) => night.called === called);
    return { nights: some.length, needed: some.filter(({ needed }) => needed).length, expected: some.reduce((sum, { chance }) => sum + chance, 0) };
  };
  return { called: countOf(true), quiet: countOf(false) };
}
