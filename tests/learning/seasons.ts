import { fileURLToPath } from 'node:url';
import { readGreenhouse } from '../../bot/commands/read-input.js';
import { replaySeason } from '../../bot/commands/replay-season.js';
import { readSeason } from '../../bot/commands/season-folder.js';
import { crpsMixtureK } from '../../engine/score/crps-mixture.js';
import { binomialCdf } from '../../engine/score/coverage.js';
import { celsiusToKelvin } from '../../engine/units.js';
import type { Verdict } from '../../engine/plan/outlook.js';
import type { SpokenChance } from '../../engine/score/reliability.js';
import { BASELINES, crpsOf, examplesOf, inputsByNight } from './baselines.js';
import { verdictsOfNight } from './verdict-reliability.js';

/** Outside seasons are read in place; greenhouse files are this project's own. */
export const seasonFolder = (name: string): string => fileURLToPath(new URL(`../../../shared/validation/seasons/${name}`, import.meta.url));
export const seasonGreenhouse = (name: string): string => fileURLToPath(new URL(`../fixtures/seasons/${name}.json`, import.meta.url));
export const SEASONS = ['s01-single-tunnel-clay', 's02-double-gothic-covers', 's08-small-double-heater', 's09-drums-added'] as const;

/** Nights before this one are for learning, in every frozen comparison alike. */
const SCORED_AFTER_NIGHT = 30;

export interface SeasonScore {
  readonly nights: number;
  readonly squares: number;
  readonly floorSquares: number;
  readonly inside80: number;
  readonly width: number;
  readonly crps: Readonly<Record<string, number>>;
  readonly verdicts: readonly SpokenChance<Verdict>[];
}

/** Learns from the first readings alone, then says every later night; sums over the nights, so that seasons add up. */
export async function frozenScore(name: string, learnUntil: number): Promise<SeasonScore> {
  const season = await readSeason(seasonFolder(name));
  const greenhouse = await readGreenhouse(seasonGreenhouse(name));
  const inputs = inputsByNight(season);
  const train = examplesOf(season, inputs).slice(0, learnUntil);
  const total = { nights: 0, squares: 0, floorSquares: 0, inside80: 0, width: 0 };
  const verdicts: SpokenChance<Verdict>[] = [];
  const crps: Record<string, number> = { house: 0, ...Object.fromEntries(Object.keys(BASELINES).map((key) => [key, 0])) };
  for (const { lines, lows } of replaySeason(season, greenhouse, learnUntil)) {
    const line = lines.find(({ place }) => place === 'inside')!;
    if (line.night <= SCORED_AFTER_NIGHT) continue;
    const cell = (table: typeof season.truth, column: string): number => Number(table!.find((row) => Number(row['night']) === line.night)![column]);
    const cameC = cell(season.truth, 'min_inside_c');
    total.nights += 1;
    total.squares += (line.mean_c - cameC) ** 2;
    total.floorSquares += (cell(season.floor, 'inside_c') - cameC) ** 2;
    total.inside80 += cameC >= line.lo80_c && cameC <= line.hi80_c ? 1 : 0;
    total.width += line.hi80_c - line.lo80_c;
    crps['house']! += crpsMixtureK(lows.find(({ key }) => key.place === 'inside')!.low, celsiusToKelvin(cameC));
    verdicts.push(...verdictsOfNight(season, { lines, lows }));
    for (const [key, baseline] of Object.entries(BASELINES)) crps[key]! += crpsOf(baseline(train, inputs.get(line.night)!), cameC);
  }
  return { ...total, crps, verdicts };
}

export function pooled(scores: readonly SeasonScore[]): SeasonScore {
  const sum = (of: (score: SeasonScore) => number): number => scores.reduce((total, score) => total + of(score), 0);
  return { nights: sum(({ nights }) => nights), squares: sum(({ squares }) => squares), floorSquares: sum(({ floorSquares }) => floorSquares), inside80: sum(({ inside80 }) => inside80), width: sum(({ width }) => width), crps: Object.fromEntries(Object.keys(scores[0]!.crps).map((key) => [key, sum(({ crps }) => crps[key]!)])), verdicts: scores.flatMap(({ verdicts }) => verdicts) };
}

/** One line of what a person wants to know of a score. */
export function scoreLine(title: string, score: SeasonScore): string {
  const rms = (squares: number): number => Math.sqrt(squares / score.nights);
  const few = binomialCdf(score.inside80, score.nights, 0.8);
  const crps = Object.entries(score.crps).map(([key, sum]) => `${key} ${(sum / score.nights).toFixed(2)}`).join(', ');
  return `${title}: rms ${rms(score.squares).toFixed(2)} K, floor ${rms(score.floorSquares).toFixed(2)} K, ratio ${(rms(score.squares) / rms(score.floorSquares)).toFixed(2)}; 80 % range held ${(score.inside80 / score.nights).toFixed(2)} of ${score.nights} (chance of so few ${few.toFixed(3)}), width ${(score.width / score.nights).toFixed(2)} K; CRPS ${crps}`;
}
