import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { answerRecord } from '../../../bot/features/record/answer-record.js';
import type { NightsPicture } from '../../../bot/features/record/nights-picture.js';
import type { AdvisoryAction } from '../../../bot/features/evening/advisory.js';
import { HOUSE } from '../reading/reading-rig.js';
import { shortForm } from '../../../bot/text/short-form.js';
import { outsideGsm } from '../text/gsm.js';
import { december, keptNights, type KeptNights } from './kept-nights.js';

const NIGHT = '2026-01-14';
const HEAT: AdvisoryAction = { action: 'heater', setC: 3, from: `${NIGHT}T16:00:00-05:00`, until: `${NIGHT}T07:00:00-05:00` };

let kept: KeptNights;
let drawn: NightsPicture | null;
beforeEach(async () => {
  kept = await keptNights();
  drawn = null;
});
afterEach(() => kept.store.close());

async function record(): Promise<string> {
  const drawNights = (picture: NightsPicture): Promise<string> => {
    drawn = picture;
    return Promise.resolve('PNG');
  };
  const { text, picturePng } = await answerRecord(kept.subject, { store: kept.store, drawNights });
  expect(picturePng).toBe(drawn === null ? undefined : 'PNG');
  expect(outsideGsm(text), text).toEqual([]);
  expect(shortForm({ text }).length).toBeLessThanOrEqual(160);
  expect(shortForm({ text })).not.toMatch(/\.\.\.$/u);
  expect(text, text).not.toMatch(/undefined|NaN|null/u);
  return text;
}

/** So many nights that were said at 0 degrees, read as these. */
async function nightsRead(lowsC: readonly number[]): Promise<void> {
  for (const [n, night] of december(lowsC.length).entries()) {
    await kept.said(night, { inside: 0 });
    await kept.read(night, lowsC[n]!);
  }
}

describe('how right I was', () => {
  it('cannot be told before a night has both a forecast and a low', async () => {
    expect(await record()).toContain('I cannot tell yet');
    await kept.said('2025-12-01', { inside: 0 });
    await kept.read('2025-12-02', 0);
    expect(await record()).toContain('I cannot tell yet');
    expect(drawn).toBeNull();
  });

  it('is a count, with what may be chance, the usual miss, and a picture', async () => {
    await nightsRead([1, -1, 1, -1, 1, -1, 1, -1, 1, -1, 3, -3]);
    const said = await record();
    expect(said).toContain('On 10 of 12 nights the low inside lay in my range. It should on 4 of 5.');
    // (10 times 1 and twice 3) over 12.
    expect(said).toContain('off by 1.3 degrees C on average');
    expect(said).toContain('no lean');
    expect(said).toContain('12 nights leave much open');
    expect(drawn!.nights.map(({ read }) => read!.tempC)).toEqual([1, -1, 1, -1, 1, -1, 1, -1, 1, -1, 3, -3]);
  });

  it('says that few nights tell nothing', async () => {
    await nightsRead([1]);
    expect(await record()).toContain('On the one night so far the low inside lay in my range.');
    expect(drawn).toBeNull();
    await kept.said('2025-12-20', { inside: 0 });
    await kept.read('2025-12-20', 5);
    const said = await record();
    expect(said).toContain('On 1 of 2 nights');
    expect(said).toContain('Too few nights to tell');
  });

  it.each([
    ['colder than I said', Array.from({ length: 12 }, (_, n) => -1 - 0.1 * (n % 3)), 'It came colder than I said, by 1.1 degrees C'],
    ['warmer than I said', Array.from({ length: 12 }, (_, n) => 1 + 0.1 * (n % 3)), 'It came warmer than I said, by 1.1 degrees C'],
    ['in too narrow ranges', [1, 3, -3, 4, -4, 3, -3, 1], 'too narrow'],
    ['in too wide ranges', Array.from({ length: 14 }, (_, n) => (n % 2 === 0 ? 0.2 : -0.2)), 'wider than they need to be'],
    ['as it should', Array.from({ length: 20 }, (_, n) => (n % 5 === 4 ? 3 * (-1) ** n : (-1) ** n)), 'That is as it should be.'],
  ])('tells lows that came %s', async (_name, lowsC, words) => {
    await nightsRead(lowsC);
    expect(await record()).toContain(words);
  });

  it('speaks in the unit of the grower', async () => {
    kept = await keptNights({ ...HOUSE, grower: { units: 'F' } });
    await nightsRead([1, -1, 1, -1, 1]);
    expect(await record()).toContain('off by 1.8 degrees F');
  });
});

describe('what counts', () => {
  it('is what was said last before the middle of the night', async () => {
    await kept.said(NIGHT, { inside: 0 });
    await kept.said(NIGHT, { inside: 10 }, { clock: '2026-01-14T22:00' });
    await kept.said(NIGHT, { inside: 0 }, { clock: '2026-01-15T03:00' });
    await kept.read(NIGHT, 10);
    expect(await record()).toContain('off by 0 degrees');
  });

  it('is no reading that is asked about, in the sun, taken back or replaced', async () => {
    await kept.said(NIGHT, { inside: 0 });
    await kept.read(NIGHT, 5, { judged: 'open' });
    await kept.read(NIGHT, 6, { judged: 'sunlit', thermometer: 'post' });
    await kept.store.withdrawReading(await kept.read(NIGHT, 7, { place: 'outside' }), Date.parse(`${NIGHT}T12:00:00Z`) / 1000);
    await kept.read(NIGHT, 8, { statistic: 'high' });
    const said = await record();
    expect(said).toContain('I cannot tell yet');
    // Else the record would be of what was believed alone.
    expect(said).toContain('Left out: 1 night whose low still has a question mark.');
  });

  it('is a bound where the thermometer was not reset', async () => {
    await kept.said(NIGHT, { inside: 0 });
    await kept.read(NIGHT, 1, { judged: 'not-reset' });
    expect(await record()).toContain('On 1 night more the thermometer was not reset: it was no colder than it shows, and that fits what I said.');
    await kept.said('2026-01-15', { inside: 0 });
    await kept.read('2026-01-15', 3, { judged: 'not-reset' });
    expect(await record()).toContain('so warmer than my range');
  });

  it('is the newer of two lows of one thermometer', async () => {
    await kept.said(NIGHT, { inside: 0 });
    await kept.read(NIGHT, 9);
    await kept.read(NIGHT, 0);
    expect(await record()).toContain('lay in my range');
  });

  it('is each thermometer by itself', async () => {
    for (const night of december(2)) {
      await kept.said(night, { inside: 0, outside: -5 });
      await kept.read(night, 0);
    }
    await kept.read(december(1)[0]!, -9, { place: 'outside' });
    const said = await record();
    expect(said).toContain('On all of 2 nights the low inside');
    expect(said).toContain('Outside: in my range on 0 of 1 night, off by 4 degrees C.');
  });
});

describe('a night that did not go as planned', () => {
  beforeEach(() => kept.said(NIGHT, { inside: 3, outside: -5 }, { plan: [HEAT], idle: { inside: -2, outside: -5 } }));

  it('is left out, and that is said', async () => {
    await kept.told(NIGHT, { items: ['heater'] }, false);
    await kept.read(NIGHT, -2);
    expect(await record()).toContain('Left out: 1 night on which you did otherwise than planned.');
  });

  it('is left out as well when nobody told what was done', async () => {
    await kept.read(NIGHT, 3);
    const said = await record();
    expect(said).toContain('no low of a night of which I know that it went as planned');
    expect(said).toContain('Left out: 1 night on which I was not told what was done.');
  });

  it('counts when the plan was done', async () => {
    await kept.told(NIGHT, { items: ['heater'] }, false);
    await kept.told(NIGHT, { items: ['heater'] }, true, `${NIGHT}T18:00`);
    await kept.read(NIGHT, 3);
    const said = await record();
    expect(said).toContain('lay in my range');
    expect(said).not.toContain('Left out');
  });

  it('counts outside all the same', async () => {
    await kept.read(NIGHT, -5, { place: 'outside' });
    expect(await record()).toContain('the low outside lay in my range');
  });

  it('counts where the plan changes nothing', async () => {
    await kept.said('2026-01-15', { inside: 0.1 }, { plan: [{ action: 'cover', target: 'north', by: '2026-01-15T17:00:00-05:00' }], idle: { inside: 0 } });
    await kept.read('2026-01-15', 0);
    expect(await record()).toContain('lay in my range');
  });
});
