import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { answerRecord } from '../../../bot/features/record/answer-record.js';
import { callRecord } from '../../../bot/features/record/call-record.js';
import { pastNights } from '../../../bot/features/record/past-nights.js';
import type { AdvisoryAction } from '../../../bot/features/evening/advisory.js';
import { nightSpan } from '../../../engine/index.js';
import { outsideGsm } from '../text/gsm.js';
import { december, keptNights, type KeptNights } from './kept-nights.js';

const COVER: AdvisoryAction = { action: 'cover', target: 'the bed', by: '2025-12-01T16:30:00-05:00' };
const leafAt = (judgedLowC: number, damageProbability: number) => ({ judgedAt: 'leaf' as const, judgedLowC, damageBeginsC: -3, damageProbability });

let kept: KeptNights;
beforeEach(async () => {
  kept = await keptNights();
});
afterEach(() => kept.store.close());

/** A night that was said at 0 degrees inside with leaves a degree colder, on which the cover was laid where it was asked for. */
async function night(date: string, of: { called: boolean; readC: number; chance: number; lowC?: number }): Promise<void> {
  await kept.said(date, { inside: 0 }, { crops: [leafAt(of.lowC ?? -1, of.chance)], plan: of.called ? [COVER] : [] });
  if (of.called) await kept.told(date, { items: ['cover'] }, true);
  await kept.read(date, of.readC);
}

const said = async (): Promise<string> => (await answerRecord(kept.subject, { store: kept.store, drawNights: () => Promise.resolve('PNG') })).text;

describe('calls to work', () => {
  it('were needed where the low that was read would have marked plants with nothing done', async () => {
    const [first, second, third, fourth] = december(4) as [string, string, string, string];
    // Leaves were said at -1: with a house 2.5 degrees colder than said they come to -3.5.
    await night(first, { called: true, readC: -2.5, chance: 0.6 });
    await night(second, { called: true, readC: -1, chance: 0.5 });
    await night(third, { called: false, readC: -2.5, chance: 0.1 });
    await night(fourth, { called: false, readC: 0, chance: 0.1 });
    const text = await said();
    expect(text).toContain('I asked for work on 2 nights. Without it, something would have been marked on 1. I had reckoned on about 1.');
    expect(text).toContain('On 2 nights I asked for no work. It got cold enough to mark something on 1. I had reckoned on one at most.');
    expect(outsideGsm(text)).toEqual([]);
  });

  it('count by what was given: chances are added up', async () => {
    for (const date of december(4)) await night(date, { called: true, readC: 0, chance: 0.5 });
    const rows = await kept.store.everyReading(kept.subject.greenhouseId, 0);
    const spans = december(4).map((date) => nightSpan(Date.parse(`${date}T17:00:00Z`) / 1000, kept.subject.greenhouse.place));
    expect(callRecord(await pastNights(spans, rows, kept.subject, kept.store))).toEqual({ called: { nights: 4, needed: 0, expected: 2 }, quiet: { nights: 0, needed: 0, expected: 0 } });
  });

  it('are not judged where nobody told what was done, or nothing was read, or no crop was in mind', async () => {
    const [untold, unread, uncropped] = december(3) as [string, string, string];
    await kept.said(untold, { inside: 0 }, { crops: [leafAt(-1, 0.5)], plan: [COVER], idle: { inside: -2 } });
    await kept.read(untold, -5);
    await kept.said(unread, { inside: 0 }, { crops: [leafAt(-1, 0.5)] });
    await kept.said(uncropped, { inside: 0 });
    await kept.read(uncropped, 0);
    expect(await said()).not.toMatch(/asked for/u);
  });
});
