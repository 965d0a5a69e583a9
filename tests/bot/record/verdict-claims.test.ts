import { describe, expect, it } from 'vitest';
import { recordText } from '../../../bot/text/record-text.js';
import { reliabilityTable, type SpokenChance, type Verdict } from '../../../engine/index.js';
import { seededRandom } from '../../physics/random-houses.js';

const WORDS: readonly Verdict[] = ['safe', 'watch', 'at-risk', 'likely-lost'];
const wordOf = (chance: number): Verdict => (chance < 0.05 ? 'safe' : chance < 0.35 ? 'watch' : chance < 0.65 ? 'at-risk' : 'likely-lost');
const [NIGHTS, LOOK_EACH, WINTERS] = [90, 10, 60];
/** How four crops bear cold, in logits about the middle of them. */
const CROPS = [-2.4, -1.2, 0, 1.2];
const NO_COUNT = { nights: 0, needed: 0, expected: 0 };
const thermometer = { thermometer: { place: 'inside', name: null }, record: null, bounds: { fit: 0, warmer: 0 }, leftOut: { otherwise: 0, notTold: 0, open: 0 } };

/** Share of winters in which one of nine looks claims that a word is no chance, where harm comes so many times as often as is given. */
function shareOfClaims(timesAsOften: number): number {
  const random = seededRandom(7);
  const isClaimed = Array.from({ length: WINTERS }, () => {
    const cases: SpokenChance<Verdict>[] = [];
    return Array.from({ length: NIGHTS }, (_, night) => {
      const [cold, luck] = [6 * random() - 4.5, random()];
      cases.push(...CROPS.map((crop) => 1 / (1 + Math.exp(-cold - crop))).map((probability) => ({ night: String(night), spokenAs: wordOf(probability), probability, happened: luck < probability * timesAsOften })));
      if ((night + 1) % LOOK_EACH !== 0) return false;
      const verdicts = reliabilityTable(cases, WORDS).words.map((word) => ({ ...word, isTold: false }));
      return recordText({ main: thermometer, others: [], calls: { called: NO_COUNT, quiet: NO_COUNT }, verdicts }, 'C').includes('to be chance');
    }).includes(true);
  });
  return isClaimed.filter(Boolean).length / WINTERS;
}

describe('that a verdict is no chance', () => {
  it('is claimed in fewer than one winter in ten where the chances are sound, though it is looked at nine times', () => {
    expect(shareOfClaims(1)).toBeLessThan(0.1);
  });

  it('is claimed in most winters where harm comes twice as often as the chances say', () => {
    expect(shareOfClaims(2)).toBeGreaterThan(0.5);
  });
});
