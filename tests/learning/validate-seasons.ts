import { existsSync } from 'node:fs';
import { frozenScore, pooled, scoreLine, seasonFolder, SEASONS, type SeasonScore } from './seasons.js';
import { targetsOf, widthTargets, type Target } from './season-targets.js';

/** `npm run seasons`, or with the numbers of readings to stop at: `npm run seasons -- 0 14`. Status 1 when a target is missed. */
const LEARN_UNTIL = process.argv.length > 2 ? process.argv.slice(2).map(Number) : [0, 7, 14, 30];

const present = SEASONS.filter((name) => existsSync(seasonFolder(name)));
if (present.length === 0) console.log('No seasons beside the project: nothing was measured.');
const byReadings: { readings: number; score: SeasonScore }[] = [];
for (const readings of present.length === 0 ? [] : LEARN_UNTIL) {
  const scores: SeasonScore[] = [];
  for (const name of present) {
    const score = await frozenScore(name, readings);
    scores.push(score);
    console.log(scoreLine(`${readings} readings, ${name}`, score));
  }
  const score = pooled(scores);
  byReadings.push({ readings, score });
  console.log(scoreLine(`${readings} readings, all`, score));
}
const targets: readonly Target[] = [...byReadings.flatMap(({ readings, score }) => targetsOf(readings, score)), ...widthTargets(byReadings)];
for (const { what, isMet } of targets) console.log(`${isMet ? 'met   ' : 'MISSED'} ${what}`);
if (targets.some(({ isMet }) => !isMet)) process.exitCode = 1;
