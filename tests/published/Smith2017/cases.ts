import { metabolicHeatW } from '../../../engine/heat/compost-heap.js';
import { celsiusToKelvin, SECONDS_PER_DAY, SECONDS_PER_HOUR } from '../../../engine/units.js';
import type { PublishedTable } from '../published-table.js';

/**
 * Smith, Aber and Rynk 2017: heat recovered from 44 to 45 composting systems, mean of laboratory runs 1159 and of pilot systems 3899 kJ for each kg
 * of dry matter; over a month or two that is 0.45 and 0.75 W/kg. Assumed: 200 kg of dry matter in a cubic metre (from memory); a heap of a
 * garden is larger than the one and cruder than the other.
 */
export const source = 'Smith2017';

const DRY_KG_PER_M3 = 200;
const STEP_DAYS = 1 / 24;
const HOT_K = celsiusToKelvin(45);
/** Heat that a cubic metre makes in its first days while it stays warm, J for each kg of dry matter. */
function madeJPerKg(days: number): number {
  let joules = 0;
  for (let ageDays = STEP_DAYS / 2; ageDays < days; ageDays += STEP_DAYS) joules += metabolicHeatW({ volumeM3: 1, ageDays, coreTempK: HOT_K }).powerW * SECONDS_PER_HOUR;
  return joules / DRY_KG_PER_M3;
}
const meanWPerKg = (days: number): number => madeJPerKg(days) / (days * SECONDS_PER_DAY);

const LAB_KJ = 1159;
const PILOT_KJ = 3899;

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'heat of a heap over two months, between laboratory (1159) and pilot (3899)', unit: 'kJ/kg dry matter', tolerance: (PILOT_KJ - LAB_KJ) / 2, toleranceReason: 'half of what lies between the two means', origin: 'published',
    rows: [{ name: '60 days', expected: (PILOT_KJ + LAB_KJ) / 2, model: () => madeJPerKg(60) / 1000 }],
  },
  {
    source, title: 'mean power', unit: 'W/kg dry matter', tolerance: 0.4, toleranceReason: 'the means of a class of systems over a month or two, which the reference divided out', origin: 'published',
    rows: [
      { name: 'laboratory, 30 days', expected: 0.45, model: () => meanWPerKg(30) },
      { name: 'pilot, 60 days', expected: 0.75, model: () => meanWPerKg(60) },
    ],
  },
];
