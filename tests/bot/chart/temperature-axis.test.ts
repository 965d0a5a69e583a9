import { describe, expect, it } from 'vitest';
import { temperatureAxis } from '../../../bot/chart/temperature-axis.js';

const UPRIGHT = { topY: 100, bottomY: 700 };

describe('degrees up the picture', () => {
  it('rise evenly from the bottom to the top', () => {
    const axis = temperatureAxis({ lowestC: -20, highestC: 10, units: 'C' }, UPRIGHT);
    expect([-20, -5, 10].map((tempC) => axis.yOf(tempC))).toEqual([700, 400, 100]);
  });

  it.each(['C', 'F'] as const)('has ticks at whole degrees %s that lie where they say', (units) => {
    for (const [lowestC, highestC] of [[-31.3, 4.2], [-3, 5], [2, 29]] as const) {
      const axis = temperatureAxis({ lowestC, highestC, units }, UPRIGHT);
      expect(axis.ticks.length).toBeGreaterThan(2);
      for (const { tempC, written, y } of axis.ticks) {
        expect(written).toMatch(/^(?:0|-?[1-9]\d*)$/u);
        // Two fixed points of the scales: water freezes at 0 C and 32 F, 100 K are 180 degrees F.
        expect(tempC).toBeCloseTo(units === 'C' ? Number(written) : ((Number(written) - 32) * 100) / 180, 9);
        expect(y).toBeCloseTo(axis.yOf(tempC), 9);
      }
    }
  });

  it('puts a temperature at the same height in both units', () => {
    const inC = temperatureAxis({ lowestC: -12, highestC: 8, units: 'C' }, UPRIGHT);
    const inF = temperatureAxis({ lowestC: -12, highestC: 8, units: 'F' }, UPRIGHT);
    for (const tempC of [-12, -3.3, 0, 8]) expect(inF.yOf(tempC)).toBeCloseTo(inC.yOf(tempC), 9);
  });
});
