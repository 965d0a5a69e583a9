import { chanceBelow, type Mixture } from '../../engine/chance/mixture.js';
import { verdictFor, type Verdict } from '../../engine/plan/outlook.js';
import { reliabilityTable, type SpokenChance } from '../../engine/score/reliability.js';
import { skillScore } from '../../engine/score/skill-score.js';
import { celsiusToKelvin } from '../../engine/units.js';
import { BEDS } from './beds.js';

export const VERDICTS: readonly Verdict[] = ['safe', 'watch', 'at-risk', 'likely-lost'];

/** The verdict on every bed in one night, by what was said of the low inside, and whether it came so cold. */
export function verdictsOfNight(night: string, low: Mixture, cameC: number): readonly SpokenChance<Verdict>[] {
  return BEDS.map(({ beginsC, killedC }) => {
    const probability = chanceBelow(low, celsiusToKelvin(beginsC));
    return { night, probability, spokenAs: verdictFor(probability, chanceBelow(low, celsiusToKelvin(killedC))), happened: cameC < beginsC };
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
