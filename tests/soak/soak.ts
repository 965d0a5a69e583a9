/**
 * The running assistant under days of use and what can happen to it: npm run soak [-- --only kills --kills 50].
 * Prints a table for each trial; ends with status 1 when a promise was broken.
 */
import { parseArgs } from 'node:util';
import { days } from './days.js';
import { killRounds } from './kills.js';
import { tableOf, type Report } from './report.js';
import { rush } from './rush.js';

const { values } = parseArgs({
  options: {
    only: { type: 'string' },
    days: { type: 'string', default: '3' },
    speed: { type: 'string', default: '200' },
    kills: { type: 'string', default: '200' },
    growers: { type: 'string', default: '1000' },
    places: { type: 'string', default: '40' },
    physics: { type: 'string', default: '40' },
  },
});

const TRIALS: Readonly<Record<string, () => Promise<Report>>> = {
  days: () => days({ days: Number(values.days), speed: Number(values.speed) }),
  kills: () => killRounds(Number(values.kills)),
  rush: () => rush({ growers: Number(values.growers), places: Number(values.places), physics: false }),
  // What an evening takes stands in a fixed ratio to the number of growers: fewer of them tell it.
  physics: () => rush({ growers: Number(values.physics), places: Math.min(Number(values.places), Number(values.physics)), physics: true }),
};

const wanted = values.only?.split(',') ?? Object.keys(TRIALS);
let broken = 0;
for (const name of wanted) {
  const trial = TRIALS[name];
  if (!trial) throw new Error(`expected trials among ${Object.keys(TRIALS).join(', ')}, got ${name}`);
  const report = await trial();
  console.log(`\n${tableOf(report)}`);
  broken += report.broken.length;
}
console.log(`\n${broken === 0 ? 'every promise was kept' : `${broken} promises were broken`}`);
process.exitCode = broken === 0 ? 0 : 1;
