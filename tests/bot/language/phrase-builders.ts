import type { Phrase } from './phrase.js';

/** Short for what is expected, and for who says it when. */
export const reading = (c: number, more: object = {}): Phrase['is'] => ({ kind: 'reading', readings: [{ c, ...more }] });
export const readings = (...all: readonly object[]): Phrase['is'] => ({ kind: 'reading', readings: all });
export const outcome = (crop: string, state: string): Phrase['is'] => ({ kind: 'outcome', crop, state });
export const crop = (id: string): Phrase['is'] => ({ kind: 'crop', crop: id });
export const crops = (...ids: readonly string[]): Phrase['is'] => ({ kind: 'crop', crops: ids });
export const advice = (topic?: string): Phrase['is'] => ({ kind: 'advice', ...(topic === undefined ? {} : { topic }) });
export const did = (done: readonly string[], not?: readonly string[]): Phrase['is'] => ({ kind: 'did', ...(done.length === 0 ? {} : { done }), ...(not === undefined ? {} : { not }) });
export const condition = (item: string, on = true): Phrase['is'] => ({ kind: 'condition', items: [item], on });
export const mark = (...items: readonly string[]): Phrase['is'] => ({ kind: 'mark', items });
export const only = (kind: string): Phrase['is'] => ({ kind });
export const morning = (says: string, is: Phrase['is']): Phrase => ({ says, zone: 'America/New_York', is });
export const evening = (says: string, is: Phrase['is']): Phrase => ({ ...morning(says, is), when: 'evening' });
export const metric = (says: string, is: Phrase['is']): Phrase => ({ ...morning(says, is), units: 'C' });
export const metricEvening = (says: string, is: Phrase['is']): Phrase => ({ ...evening(says, is), units: 'C' });
