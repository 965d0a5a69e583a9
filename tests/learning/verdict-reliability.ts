import type { ReplayedNight } from '../../bot/commands/replay-season.js';
import type { SeasonFolder } from '../../bot/commands/season-folder.js';
import { chanceBelow } from '../../engine/chance/mixture.js';
import { verdictFor, type Verdict } from '../../engine/plan/outlook.js';
import { reliabilityTable, type SpokenChance } from '../../engine/score/reliability.js';
import { skillScore } from '../../engine/score/skill-score.js';
import { celsiusToKelvin } from '../../engine/units.js';
import { BEDS } from './beds.js';

export const VERDICTS: readonly Verdict[] = ['safe', 'watch', 'at-risk', 'likely-lost'];

/** The verdict on every bed in one night, by what was said of the low inside, and whether it came so cold. */
export function verdictsOfNight({ name, truth }: SeasonFolder, { lines, lows }: Pick<ReplayedNight, 'lines' | 'lows'>): readonly SpokenChance<Verdict>[] {
  const { night } = lines[0]!;
  const { low } = lows.find(({ key }) => key.place === 'inside')!;
  const cameC = Number(truth!.find((row) => Number(row['night']) === night)!['min_inside_c']);
  return BEDS.map(({ beginsC, killedC }) => {
    const probability = chanceBelow(low, celsiusToKelvin(beginsC));
    return { night: `${name} ${night}`, probability, spokenAs: verdictFor(probability, chanceBelow(low, celsiusToKelvin(killedC))), happened: cameC < beginsC };
  });
}

/** A line for each verdict, and one for the score. */
export function verdictLines(title: string, said: readonly SpokenChance<Verdict>[]): readonly string[] {
  const { words, brier } = reliabilityTable(said, VERDICTS);
  return [
    ...words.map(({ spokenAs, cases, nights, meanChance, happened, soundFrom, soundTo }) => `${title}, "${spokenAs}": harmed ${happened} of ${cases} beds on ${nights} nights, by the chances given ${(meanChance * cases).toFixed(1)} (sound: ${soundFrom} to ${soundTo})`),
    ...(brier === null ? [] : [`${title}: Brier score ${brier.score.toFixed(4)} = reliability ${brier.parts.reliability.toFixed(4)} - resolution ${brier.parts.resolution.toFixed(4)} + uncertainty ${brier.parts.uncertainty.toFixed(4)} + within ${brier.parts.withinBins.toFixed(4)}; skill against the base rate ${skillScore(brier.score, brier.parts.uncertainty)?.toFixed(2) ?? 'none'}`]),
  ];
}
