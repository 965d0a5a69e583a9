import { existsSync } from 'node:fs';
import { frozenScore, pooled, scoreLine, seasonFolder, SEASONS, type SeasonScore } from './seasons.js';

/** `npm run seasons`, or with the numbers of readings to stop at: `npm run seasons -- 0 14`. */
const LEARN_UNTIL = process.argv.length > 2 ? process.argv.slice(2).map(Number) : [0, 7, 14, 30];

const present = SEASONS.filter((name) => existsSync(seasonFolder(name)));
if (present.length === 0) console.log('No seasons beside the project: nothing was measured.');
for (const readings of present.length === 0 ? [] : LEARN_UNTIL) {
  const scores: SeasonScore[] = [];
  for (const name of present) {
    const score = await frozenScore(name, readings);
    scores.push(score);
    console.log(scoreLine(`${readings} readings, ${name}`, score));
  }
  console.log(scoreLine(`${readings} readings, all`, pooled(scores)));
}
