import { describe, expect, it } from 'vitest';
import { OutOfRangeError } from '../../../engine/errors.js';
import { packedBedEffectiveness } from '../../../engine/mass/packed-bed.js';

const BED = { massFlowKgPerS: 0.04, volumeM3: 0.5, sectionM2: 1, stoneSizeM: 0.08 };
const effectiveness = (changes: Partial<typeof BED>): number => packedBedEffectiveness({ ...BED, ...changes });

describe('air through stones', () => {
  it('comes nearer to them the slower it is, the more and the smaller they are, and never passes them', () => {
    for (const rising of [[0.4, 0.1, 0.02].map((massFlowKgPerS) => effectiveness({ massFlowKgPerS })), [0.02, 0.1, 0.5].map((volumeM3) => effectiveness({ volumeM3 })), [0.3, 0.1, 0.03].map((stoneSizeM) => effectiveness({ stoneSizeM }))]) {
      rising.slice(1).forEach((value, i) => expect(value).toBeGreaterThan(rising[i]!));
      for (const value of rising) {
        expect(value).toBeGreaterThan(0);
        expect(value).toBeLessThanOrEqual(1);
      }
    }
  });

  it('two beds behind each other leave the product of what each leaves', () => {
    expect(1 - effectiveness({ volumeM3: 0.1 })).toBeCloseTo((1 - effectiveness({ volumeM3: 0.05 })) ** 2, 9);
  });

  it('refuses a gale through a pipe full of gravel', () => {
    expect(() => effectiveness({ massFlowKgPerS: 3, sectionM2: 1 })).toThrow(OutOfRangeError);
    expect(() => effectiveness({ stoneSizeM: 1 })).toThrow(OutOfRangeError);
  });
});
