import { existsSync } from 'node:fs';
import { readGreenhouse } from '../../bot/commands/read-input.js';
import { replaySeason } from '../../bot/commands/replay-season.js';
import { readSeason } from '../../bot/commands/season-folder.js';
import type { Verdict } from '../../engine/plan/outlook.js';
import type { SpokenChance } from '../../engine/score/reliability.js';
import { costsByBed, costsLine, decisionTargets, nightsToDecide, summed, type PolicyCosts } from './cover-decisions.js';
import { gateCases, gateLines, gateTargets, type GateCase } from './gate-rates.js';
import { frozenScore, pooled, scoreLine, seasonFolder, seasonGreenhouse, SEASONS, type SeasonScore } from './seasons.js';
import { targetsOf, verdictTargets, widthTargets, type Target } from './season-targets.js';
import { AS_BELIEVED, THERMOMETER_ALONE, twinsOf, type ReadingNoise, type Twin } from './twin-houses.js';
import { twinTargets } from './twin-targets.js';
import { verdictLines, verdictsOfNight } from './verdict-reliability.js';
import { askedOfNight, judgedNights, judgedWorths, toldChanges, TAKEN_AWAY, type JudgedWorth, type ToldChange } from './worth-of-changes.js';
import { worthLines, worthTarget } from './worth-targets.js';

/**
 * `npm run seasons`: all of it. With numbers of readings to stop at, `npm run seasons -- 0 14`, what is said after so many; with `whole`, what
 * whole winters show of the gate, of cover decisions and of "what if"; with `twins`, houses of our own making. Status 1 when a target is missed.
 */
const asked = process.argv.slice(2);
const numbers = asked.filter((word) => /^\d+$/u.test(word)).map(Number);
const learnUntil = asked.length === 0 ? [0, 7, 14, 30] : numbers;
const wants = (part: string): boolean => asked.length === 0 || asked.includes(part);

const present = SEASONS.filter((name) => existsSync(seasonFolder(name)));
if (present.length === 0) console.log('No seasons beside the project: only houses of our own making are measured.');
const targets: Target[] = [
  ...(present.length === 0 ? [] : await frozenTargets()),
  ...(present.length > 0 && wants('whole') ? await wholeTargets() : []),
  ...(wants('twins') ? await twinsTargets() : []),
];
for (const { what, isMet } of targets) console.log(`${isMet ? 'met   ' : 'MISSED'} ${what}`);
if (targets.some(({ isMet }) => !isMet)) process.exitCode = 1;

/** What is said of every later night after a few readings alone. */
async function frozenTargets(): Promise<readonly Target[]> {
  const byReadings: { readings: number; score: SeasonScore }[] = [];
  for (const readings of learnUntil) {
    const scores: SeasonScore[] = [];
    for (const name of present) {
      const score = await frozenScore(name, readings);
      scores.push(score);
      console.log(scoreLine(`${readings} readings, ${name}`, score));
    }
    const score = pooled(scores);
    byReadings.push({ readings, score });
    console.log(scoreLine(`${readings} readings, all`, score));
    for (const line of verdictLines(`${readings} readings, all`, score.verdicts)) console.log(line);
  }
  return [...byReadings.flatMap(({ readings, score }) => [...targetsOf(readings, score), ...verdictTargets(readings, score)]), ...widthTargets(byReadings)];
}

/** Whole winters, learned from as they go. */
async function wholeTargets(): Promise<readonly Target[]> {
  const cases: GateCase[] = [];
  const costs: PolicyCosts[] = [];
  const worths: JudgedWorth[] = [];
  const takenAway: JudgedWorth[] = [];
  const verdicts: SpokenChance<Verdict>[] = [];
  for (const name of present) {
    const season = await readSeason(seasonFolder(name));
    const greenhouse = await readGreenhouse(seasonGreenhouse(name));
    const nights = [...replaySeason(season, greenhouse, Infinity)];
    verdicts.push(...nights.flatMap((night) => verdictsOfNight(season, night)));
    cases.push(...gateCases(season, greenhouse, nights));
    for (const [bed, ofBed] of costsByBed(nightsToDecide(season, nights))) {
      costs.push(ofBed);
      console.log(costsLine(`${name}, ${bed}`, ofBed));
    }
    const told: readonly ToldChange[] = nights.flatMap((night) => toldChanges(night, askedOfNight(season, night.lines[0]!.night)));
    const ofSeason = judgedWorths(name, told, season.truth!);
    const oneByOne = judgedNights(name, TAKEN_AWAY, told);
    worths.push(...ofSeason);
    takenAway.push(...oneByOne);
    for (const line of worthLines([...ofSeason, ...oneByOne])) console.log(line);
  }
  for (const line of [...verdictLines('learned as it went', verdicts), ...gateLines(cases)]) console.log(line);
  console.log(costsLine('all beds and houses', summed(costs)));
  return [...gateTargets(cases), ...decisionTargets(summed(costs)), worthTarget('what if', worths), worthTarget('what if drums were not there, night by night', takenAway)];
}

/** Houses whose truth is known: read as the calibration believes, and by thermometers alone. */
async function twinsTargets(): Promise<readonly Target[]> {
  const greenhouses = await Promise.all(SEASONS.map((name) => readGreenhouse(seasonGreenhouse(name))));
  const twinsWith = (noise: ReadingNoise): readonly Twin[] => greenhouses.flatMap((greenhouse, g) => twinsOf(greenhouse, { mornings: 30, twins: 12, seed: 200 + g, noise }));
  return [...twinTargets('twins', twinsWith(AS_BELIEVED), { mayBeWide: false }), ...twinTargets('twins read by thermometers alone', twinsWith(THERMOMETER_ALONE), { mayBeWide: true })];
}
