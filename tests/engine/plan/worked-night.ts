import { normalDensity } from '../../../engine/chance/normal.js';
import { damageFractionOn } from '../../../engine/crops/damage.js';
import type { Candidate, Stakes } from '../../../engine/plan/expected-loss.js';
import { celsiusToKelvin } from '../../../engine/units.js';

/**
 * The worked night of the decision rule: three crops and four plans. Money, minutes, lifts and thresholds are invented for the
 * arithmetic; they are no facts about these crops.
 */
const CROPS = [
  { worth: 60, t10C: -6, t90C: -10 },
  { worth: 80, t10C: -1, t90C: -3 },
  { worth: 120, t10C: 0, t90C: -1.5 },
] as const;
export const TOMATO = 2;

export type PlanId = 'none' | 'covers' | 'heater' | 'both';
const LIFTS_K: Readonly<Record<PlanId, readonly number[]>> = { none: [0, 0, 0], covers: [2, 2, 0], heater: [3, 3, 3], both: [4.5, 4.5, 3] };

const HOUR_WORTH = 15;
const midnight = 1_800_000_000;
/** Clock times of an invented evening, epoch s. */
export const clockS = (hour: number, minute = 0, second = 0): number => midnight + (hour * 60 + minute) * 60 + second;
export const DUSK_S = clockS(18, 40);
export const BEDTIME_S = clockS(21, 30);
export const AFTERNOON_S = clockS(16);

export const candidate = (id: string, parts: Partial<Candidate> = {}): Candidate => ({
  id, cashCost: 0, minutes: 0, hassle: 1, sideCost: 0, reliability: 1, fallbackId: id, deadlineS: null, combustion: false, reversible: true, done: false, ...parts,
});

export const PLANS: Readonly<Record<PlanId, Candidate>> = {
  none: candidate('none'),
  covers: candidate('covers', { minutes: 20, sideCost: 0.5, deadlineS: DUSK_S }),
  heater: candidate('heater', { cashCost: 6, minutes: 5, reliability: 0.95, fallbackId: 'none', deadlineS: BEDTIME_S }),
  both: candidate('both', { cashCost: 6, minutes: 25, sideCost: 0.5, reliability: 0.95, fallbackId: 'covers', deadlineS: DUSK_S }),
};
export const ALL_PLANS = Object.values(PLANS);

const STEPS = 20_000;
const WIDTH = 9;

/** Mean of a function of a normal temperature by the midpoint rule, fine enough to be called exact here. */
export function normalMean(meanC: number, sdK: number, f: (tempC: number) => number): number {
  const width = (2 * WIDTH) / STEPS;
  let sum = 0;
  for (let i = 0; i < STEPS; i += 1) {
    const z = -WIDTH + (i + 0.5) * width;
    sum += normalDensity(z) * width * f(meanC + sdK * z);
  }
  return sum;
}

/**
 * Damage by the logistic curve through 10 and 90 %, slope (T10 - T90) / (2 ln 9). The slope floor of the crop tables is left out: the
 * arithmetic was done without it, and the invented tomato is steeper.
 */
export const damageAt = (t10C: number, t90C: number): ((tempC: number) => number) => {
  const [t10K, t90K] = [celsiusToKelvin(t10C), celsiusToKelvin(t90C)];
  const curve = { t10K, t50K: (t10K + t90K) / 2, t90K, slopeK: (t10K - t90K) / (2 * Math.log(9)) };
  return (tempC) => damageFractionOn(curve, celsiusToKelvin(tempC));
};

/** Stakes of the worked night for a normal low inside without any plan. */
export function stakesFor(meanC: number, sdK: number, lossWeight = 1): Stakes {
  const row = (id: PlanId): readonly number[] => CROPS.map(({ t10C, t90C }, k) => normalMean(meanC + LIFTS_K[id][k]!, sdK, damageAt(t10C, t90C)));
  return {
    worth: CROPS.map(({ worth }) => worth),
    meanDamage: new Map((Object.keys(LIFTS_K) as PlanId[]).map((id) => [id, row(id)])),
    hourWorth: HOUR_WORTH,
    lossWeight,
  };
}

/** One action of cost 10 against one loss of 100; `efficacy` is the share of the loss that acting averts. */
export function oneAction(chance: number, parts: { efficacy?: number; lossWeight?: number } = {}): { candidates: readonly Candidate[]; nothingId: string; stakes: Stakes; nowS: number } {
  return {
    candidates: [candidate('none'), candidate('act', { cashCost: 10 })],
    nothingId: 'none',
    stakes: { worth: [100], meanDamage: new Map([['none', [chance]], ['act', [chance * (1 - (parts.efficacy ?? 1))]]]), hourWorth: HOUR_WORTH, lossWeight: parts.lossWeight ?? 1 },
    nowS: AFTERNOON_S,
  };
}
