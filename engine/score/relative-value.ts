import { assertInRange } from '../errors.js';
import type { ContingencyTable } from './contingency-table.js';

/**
 * What yes/no forecasts are worth to somebody with a given cost/loss ratio: 1 as good as knowing, 0 no better than always or never acting.
 * Units: counts, cost over loss; dimensionless, negative where the forecasts do harm.
 * Valid: ratio between 0 and 1, both ends left out.
 * Outside: throws OutOfRangeError; null where no event, or nothing but events, was observed.
 * Source: Richardson2000 (relative economic value), as on BoM-Verification; best at the base rate, where it is the Peirce score.
 */
export function relativeValue(table: ContingencyTable, costLossRatio: number): number | null {
  assertInRange('costLossRatio', costLossRatio, { lowest: Number.EPSILON, highest: 1 - Number.EPSILON, unit: '' });
  const { hits, falseAlarms, misses, correctNegatives } = table;
  const events = hits + misses;
  const others = falseAlarms + correctNegatives;
  if (events === 0 || others === 0) return null;
  const baseRate = events / (events + others);
  const detection = hits / events;
  const falseDetection = falseAlarms / others;
  const ofClimatology = Math.min(costLossRatio, baseRate);
  const ofForecasts = falseDetection * costLossRatio * (1 - baseRate) + detection * baseRate * costLossRatio + (1 - detection) * baseRate;
  return (ofClimatology - ofForecasts) / (ofClimatology - baseRate * costLossRatio);
}
