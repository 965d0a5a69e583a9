import type { ReplayedNight } from '../../bot/commands/replay-season.js';
import type { SeasonFolder } from '../../bot/commands/season-folder.js';
import { meanOver, type Mixture } from '../../engine/chance/mixture.js';
import { damageFractionAt } from '../../engine/crops/damage.js';
import { choose } from '../../engine/plan/choose.js';
import { costOf, type Candidate } from '../../engine/plan/expected-loss.js';
import { celsiusToKelvin } from '../../engine/units.js';
import { inputsByNight } from './baselines.js';
import { BEDS, type Bed } from './beds.js';
import type { Target } from './season-targets.js';

/** A cover is worth two degrees, in the decision and in the truth alike (section 1.8): what is judged is the forecast and the rule. */
const LIFT_K = 2;
const HOUR_WORTH = 15;
const COVER_MINUTES = 20;
const SIDE_COST = 0.5;
/** As section 8.4 of that reference holds: what a rule tuned with hindsight on the forecast alone could have saved. */
const MOST_OVER_HINDSIGHT = 1.05;
const STEP_C = 0.25;

const plain: Candidate = { id: 'nothing', cashCost: 0, minutes: 0, hassle: 1, sideCost: 0, reliability: 1, fallbackId: 'nothing', deadlineS: null, combustion: false, reversible: true, done: false };
const cover: Candidate = { ...plain, id: 'cover', minutes: COVER_MINUTES, sideCost: SIDE_COST, fallbackId: 'cover' };
export const COVER_COST = costOf(cover, HOUR_WORTH);

/** One night and bed: what was forecast outside, what we would do, and what either way costs in truth. */
export interface NightToDecide {
  readonly bed: string;
  readonly forecastLowC: number;
  readonly covers: boolean;
  readonly lossCovered: number;
  readonly lossOpen: number;
}

const damage = (bed: Bed, tempK: number): number => damageFractionAt({ tempK, damageBeginsK: celsiusToKelvin(bed.beginsC), killedK: celsiusToKelvin(bed.killedC) });

function isCovered(bed: Bed, low: Mixture): boolean {
  const meanDamage = new Map([['nothing', [meanOver(low, (tempK) => damage(bed, tempK))]], ['cover', [meanOver(low, (tempK) => damage(bed, tempK + LIFT_K))]]]);
  return choose({ candidates: [plain, cover], nothingId: 'nothing', stakes: { worth: [bed.worth], meanDamage, hourWorth: HOUR_WORTH, lossWeight: 1 }, nowS: 0 }).chosen.id === 'cover';
}

/** Every night of a season for every bed, decided in its evening from what was said of the low inside. */
export function nightsToDecide(season: SeasonFolder, nights: readonly ReplayedNight[]): readonly NightToDecide[] {
  const inputs = inputsByNight(season);
  return nights.flatMap(({ lines, lows }) => {
    const { night } = lines[0]!;
    const cameK = celsiusToKelvin(Number(season.truth!.find((row) => Number(row['night']) === night)!['min_inside_c']));
    const { low } = lows.find(({ key }) => key.place === 'inside')!;
    return BEDS.map((bed): NightToDecide => ({
      bed: bed.name,
      forecastLowC: inputs.get(night)![0]!,
      covers: isCovered(bed, low),
      lossCovered: COVER_COST + bed.worth * damage(bed, cameK + LIFT_K),
      lossOpen: bed.worth * damage(bed, cameK),
    }));
  });
}

/** Cost and loss together of each way to decide. */
export interface PolicyCosts {
  readonly ours: number;
  readonly always: number;
  readonly never: number;
  readonly hindsight: number;
  readonly perfect: number;
}

const costWhere = (nights: readonly NightToDecide[], covers: (night: NightToDecide) => boolean): number => nights.reduce((sum, night) => sum + (covers(night) ? night.lossCovered : night.lossOpen), 0);

/** Costs of one bed in one house over a winter; the threshold is the best that this winter could have told. */
export function policyCosts(nights: readonly NightToDecide[]): PolicyCosts {
  const lowest = Math.floor(Math.min(...nights.map(({ forecastLowC }) => forecastLowC)));
  const highest = Math.ceil(Math.max(...nights.map(({ forecastLowC }) => forecastLowC)));
  // From never to always.
  const thresholds = Array.from({ length: (highest - lowest) / STEP_C + 2 }, (_, k) => lowest + k * STEP_C);
  return {
    ours: costWhere(nights, ({ covers }) => covers),
    always: costWhere(nights, () => true),
    never: costWhere(nights, () => false),
    hindsight: Math.min(...thresholds.map((thresholdC) => costWhere(nights, ({ forecastLowC }) => forecastLowC < thresholdC))),
    perfect: costWhere(nights, ({ lossCovered, lossOpen }) => lossCovered < lossOpen),
  };
}

/** Costs of all beds of a house, each with its own threshold. */
export function costsByBed(nights: readonly NightToDecide[]): ReadonlyMap<string, PolicyCosts> {
  return new Map(BEDS.map(({ name }) => [name, policyCosts(nights.filter(({ bed }) => bed === name))]));
}

export function summed(all: readonly PolicyCosts[]): PolicyCosts {
  const sum = (of: (costs: PolicyCosts) => number): number => all.reduce((total, costs) => total + of(costs), 0);
  return { ours: sum(({ ours }) => ours), always: sum(({ always }) => always), never: sum(({ never }) => never), hindsight: sum(({ hindsight }) => hindsight), perfect: sum(({ perfect }) => perfect) };
}

export const costsLine = (title: string, { ours, always, never, hindsight, perfect }: PolicyCosts): string =>
  `${title}: ours ${ours.toFixed(0)}, best threshold in hindsight ${hindsight.toFixed(0)}, perfect ${perfect.toFixed(0)}, always ${always.toFixed(0)}, never ${never.toFixed(0)}`;

export function decisionTargets(costs: PolicyCosts): readonly Target[] {
  const { ours, always, never, hindsight, perfect } = costs;
  return [
    { what: `cost and loss of our cover decisions ${(ours / hindsight).toFixed(3)} times the best threshold in hindsight, at most ${MOST_OVER_HINDSIGHT}`, isMet: ours <= MOST_OVER_HINDSIGHT * hindsight },
    // What no decision could have saved hides most of a difference.
    { what: `beyond what perfect knowledge would have lost: ours ${(ours - perfect).toFixed(0)}, the best threshold in hindsight ${(hindsight - perfect).toFixed(0)}, no more than that`, isMet: ours - perfect <= hindsight - perfect },
    { what: `cost and loss of our cover decisions ${ours.toFixed(0)}, below always (${always.toFixed(0)}) and never (${never.toFixed(0)})`, isMet: ours < always && ours < never },
  ];
}
