import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { answerRecord } from '../../../bot/features/record/answer-record.js';
import type { AdvisoryAction } from '../../../bot/features/evening/advisory.js';
import { outsideGsm } from '../text/gsm.js';
import { december, keptNights, type KeptNights, type SaidCrop } from './kept-nights.js';

const COVER: AdvisoryAction = { action: 'cover', target: 'north', by: '2025-12-01T16:30:00-05:00' };
/** Lettuce in the house that was said at 0 degrees, its leaves at -1, marked from -3. */
const lettuce = (changes: Partial<SaidCrop> = {}): SaidCrop => ({ crop: 'lettuce', asked: 'lettuce', bed: 'north', verdict: 'watch', damageProbability: 0.2, damageBeginsC: -3, judgedLowC: -1, judgedAt: 'leaf', pickedBefore: false, ...changes });
const [NIGHT] = december(1) as [string];

let kept: KeptNights;
beforeEach(async () => {
  kept = await keptNights();
});
afterEach(() => kept.store.close());

/** Lines on verdicts alone. */
async function said(): Promise<readonly string[]> {
  const { text } = await answerRecord(kept.subject, { store: kept.store, drawNights: () => Promise.resolve('PNG') });
  expect(outsideGsm(text), text).toEqual([]);
  return text.split('\n').filter((line) => /^When I said|^Too few nights yet/u.test(line));
}

describe('a verdict', () => {
  it('held or not by the low at the plant: what the house was off by, the plants were off by too', async () => {
    // At -2.5 inside the leaves come to -3.5, at -1 to -2.
    for (const [n, night] of december(6).entries()) {
      await kept.said(night, { inside: 0 }, { verdicts: [lettuce()] });
      await kept.read(night, n < 2 ? -2.5 : -1);
    }
    expect(await said()).toEqual(['When I said watch, it got cold enough for marks on 2 of 6 crop nights. I had given 2 in 10.']);
  });

  it('is told by its words, the mildest first', async () => {
    for (const night of december(8)) {
      const verdicts = [lettuce({ crop: 'tomato', asked: 'tomatoes', verdict: 'at-risk', damageProbability: 0.5, damageBeginsC: -1.5 }), lettuce({ crop: 'kale', asked: 'kale', verdict: 'safe', damageProbability: 0.01, damageBeginsC: -8 })];
      await kept.said(night, { inside: 0 }, { verdicts });
      await kept.read(night, -1);
    }
    // Leaves at -2 are below -1.5 on all eight nights; half to the eighth is 4 in 1000.
    expect(await said()).toEqual(['When I said safe, it never got cold enough for marks: 8 of 8 crop nights.', 'When I said at risk, it got cold enough for marks on 8 of 8 crop nights. I had given 5 in 10. That is too often to be chance: take more care than I say.']);
  });

  it('that came true too seldom is no reason for less care', async () => {
    for (const night of december(5)) {
      await kept.said(night, { inside: 0 }, { verdicts: [lettuce({ verdict: 'likely-lost', damageProbability: 0.95 })] });
      await kept.read(night, 0);
    }
    expect((await said())[0]).toMatch(/on none of 5 crop nights\. I had given 9\+ in 10\. That is too seldom to be chance\.$/u);
  });

  it('that held safe is said to have left no marks only where all of it was told of the plants', async () => {
    for (const night of december(5)) {
      await kept.said(night, { inside: 0 }, { verdicts: [lettuce({ verdict: 'safe', damageProbability: 0.01 })] });
      await kept.came(night, 'lettuce', 'fine');
    }
    expect(await said()).toEqual(['When I said safe, nothing was marked: 5 of 5 crop nights.']);
    const sixth = december(6).at(-1)!;
    await kept.said(sixth, { inside: 0 }, { verdicts: [lettuce({ verdict: 'safe', damageProbability: 0.01 })] });
    await kept.read(sixth, 0);
    expect(await said()).toEqual(['When I said safe, it never got cold enough for marks: 6 of 6 crop nights.']);
  });

  it('of few nights is no judgement', async () => {
    await kept.said(NIGHT, { inside: 0 }, { verdicts: [lettuce({ verdict: 'safe', damageProbability: 0.02 })] });
    await kept.read(NIGHT, 0);
    expect(await said()).toEqual(['When I said safe, it never got cold enough for marks: 1 of 1 crop night.', 'Too few nights yet to judge that.']);
    for (const night of december(6).slice(1)) {
      await kept.said(night, { inside: 0 }, { verdicts: [lettuce()] });
      await kept.read(night, 0);
    }
    expect((await said()).at(-1)).toBe('Too few nights yet to judge "safe".');
  });
});

describe('what tells', () => {
  it('is first what was told of the crop, also without a reading, and of a family for each of its crops', async () => {
    await kept.said(NIGHT, { inside: 0 }, { verdicts: [lettuce({ crop: 'lettuce_mature', verdict: 'at-risk', damageProbability: 0.5 })] });
    await kept.came(NIGHT, 'lettuce', 'fine');
    expect((await said())[0]).toContain('on none of 1 crop night');
    await kept.read(NIGHT, -9);
    expect((await said())[0]).toContain('on none of 1 crop night');
    await kept.came(NIGHT, 'lettuce', 'dead');
    expect((await said())[0]).toContain('on 1 of 1 crop night');
  });

  it('of one bed is not of another, and marks without a bed are of the plants that had it worst', async () => {
    const verdicts = [lettuce(), lettuce({ bed: 'south', judgedLowC: 1 })];
    await kept.said(NIGHT, { inside: 0 }, { verdicts });
    await kept.came(NIGHT, 'lettuce', 'marked');
    expect((await said())[0]).toContain('on 1 of 1 crop night');
    await kept.came(NIGHT, 'lettuce', 'fine', 'south');
    expect((await said())[0]).toContain('on 1 of 2 crop nights');
  });

  it('is a thermometer under the cover where there is one, else the one inside', async () => {
    const verdicts = [lettuce({ judgedAt: 'cover', judgedLowC: 1 })];
    await kept.said(NIGHT, { inside: -2, cover: 1 }, { verdicts, crops: [lettuce({ judgedLowC: -3 })], plan: [COVER], coveredBed: 'north' });
    await kept.told(NIGHT, { items: ['cover'] }, true);
    // Ten degrees colder than said.
    await kept.read(NIGHT, -12);
    expect((await said())[0]).toContain('on 1 of 1 crop night');
    await kept.read(NIGHT, -1, { place: 'cover' });
    expect((await said())[0]).toContain('on none of 1 crop night');
  });

  it('says nothing of leaves but by what it was off by', async () => {
    // Leaves under the cover were said a degree colder than its air: at -2.5 there, they had -3.5.
    await kept.said(NIGHT, { inside: -2, cover: 0 }, { verdicts: [lettuce()], plan: [COVER], coveredBed: 'north' });
    await kept.told(NIGHT, { items: ['cover'] }, true);
    await kept.read(NIGHT, -2.5, { place: 'cover' });
    expect((await said())[0]).toContain('on 1 of 1 crop night');
  });
});

describe('nights that tell nothing of a verdict', () => {
  const planned = (): Promise<void> => kept.said(NIGHT, { inside: 0 }, { verdicts: [lettuce({ judgedLowC: 1 }), lettuce({ crop: 'kale', asked: 'kale', bed: 'south' })], crops: [lettuce({ judgedLowC: -2 }), lettuce({ crop: 'kale', asked: 'kale', bed: 'south' })], plan: [COVER] });

  it('are those that went otherwise than planned', async () => {
    await planned();
    await kept.told(NIGHT, { items: ['cover'] }, false);
    await kept.read(NIGHT, 0);
    expect(await said()).toEqual([]);
  });

  it('and of which nobody told, but for crops that the plan changes nothing for', async () => {
    await planned();
    await kept.read(NIGHT, 0);
    expect((await said())[0]).toContain('of 1 crop night.');
  });

  it.each([
    ['a crop that was picked', { pickedBefore: true }, {}],
    ['a crop that is judged in the soil', { judgedAt: 'soil' }, {}],
    ['a low that has a question mark', {}, { judged: 'open' }],
    ['a thermometer that was not reset', {}, { judged: 'not-reset' }],
    ['a reading outside', {}, { place: 'outside' }],
  ] as const)('and %s', async (_name, crop, reading) => {
    await kept.said(NIGHT, { inside: 0, outside: -4 }, { verdicts: [lettuce(crop)] });
    await kept.read(NIGHT, -5, reading);
    expect(await said()).toEqual([]);
  });
});
