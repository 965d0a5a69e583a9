import { choose } from '../../../engine/plan/choose.js';
import { AFTERNOON_S, ALL_PLANS, oneAction, stakesFor, type PlanId } from '../../engine/plan/worked-night.js';
import type { PublishedRow, PublishedTable } from '../published-table.js';

/** Thompson 1952 and Murphy1977: act when the chance passes cost over loss. The worked cases of this project's rule in that form (D1-D6) and with three crops and four plans (D7-D14), worked out apart from this code; which plan is chosen is held by the tests of the plan. */
export const source = 'Thompson1952';

const one = (name: string, chance: number, parts: { efficacy?: number; lossWeight?: number }, printed: { none: number; act: number }): PublishedRow[] =>
  (['none', 'act'] as const).map((id) => ({ name: `${name}: ${id}`, expected: printed[id], model: () => choose(oneAction(chance, parts)).losses.get(id)! }));

const night = (name: string, low: { meanC: number; sdK: number; lossWeight?: number }, printed: Partial<Record<PlanId, number>>): PublishedRow[] =>
  (Object.keys(printed) as PlanId[]).map((id) => ({
    name: `${name}: ${id}`,
    expected: printed[id]!,
    model: () => choose({ candidates: ALL_PLANS, nothingId: 'none', stakes: stakesFor(low.meanC, low.sdK, low.lossWeight), nowS: AFTERNOON_S }).losses.get(id)!,
  }));

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'one action against one loss', unit: 'money', tolerance: 1e-9, toleranceReason: 'exact arithmetic', origin: 'worked example of this project',
    rows: [
      ...one('D1', 0.05, {}, { none: 5, act: 10 }),
      ...one('D2', 0.15, {}, { none: 15, act: 10 }),
      ...one('D3', 0.15, { efficacy: 0.7 }, { none: 15, act: 14.5 }),
      ...one('D4', 0.16, { efficacy: 0.7 }, { none: 16, act: 14.8 }),
      ...one('D5', 0.08, { lossWeight: 2 }, { none: 16, act: 10 }),
      ...one('D6', 0.15, { lossWeight: 0.5 }, { none: 7.5, act: 10 }),
    ],
  },
  {
    source, title: 'three crops, four plans', unit: 'money', tolerance: 0.05, toleranceReason: 'printed to 0.01; some are sums of rounded terms', origin: 'worked example of this project',
    rows: [
      ...night('D7', { meanC: -0.5, sdK: 1.2 }, { none: 63.13, covers: 57.34, heater: 11.46, both: 16.3 }),
      ...night('D9', { meanC: 1, sdK: 1.2 }, { none: 13.24, covers: 17.16, heater: 7.95, both: 13.37 }),
      ...night('D10', { meanC: 2, sdK: 1.2, lossWeight: 3 }, { none: 8.43, heater: 7.68 }),
      ...night('D11, sure', { meanC: 2, sdK: 1.2 }, { none: 2.81, heater: 7.39 }),
      ...night('D11, unsure', { meanC: 2, sdK: 2.2 }, { none: 17.29, heater: 8.91 }),
      ...night('D14, 1.4', { meanC: 1.4, sdK: 1.2 }, { none: 7.492, heater: 7.638 }),
      ...night('D14, 1.6', { meanC: 1.6, sdK: 1.2 }, { none: 5.495, heater: 7.533 }),
      ...night('D14, 1.8', { meanC: 1.8, sdK: 1.2 }, { none: 3.963, heater: 7.453 }),
      ...night('D14, 2.0', { meanC: 2, sdK: 1.2 }, { none: 2.811, heater: 7.393 }),
    ],
  },
];
