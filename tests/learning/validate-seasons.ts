import { existsSync } from 'node:fs';
import { frozenScore, pooled, scoreLine, seasonFolder, SEASONS, type SeasonScore } from './seasons.js';

const LEARN_UNTIL = [0, 7, 14, 30] as const;

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
