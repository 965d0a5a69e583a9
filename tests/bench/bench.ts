import { cpus } from 'node:os';
import { AIR_AND_MASS, compareWithOdex, DRY_HOUSE, FILM_HOUSE } from './against-odex.js';
import { timeNight, type NightTiming } from './house-night.js';
import { timeEvening } from './whole-evening.js';

const COVER = { kind: 'fabric', weight: 30 } as const;
const fixed = (value: number, digits = 2): string => value.toFixed(digits);

console.log(`node ${process.version}, ${cpus().length} x ${cpus()[0]?.model ?? 'unknown processor'}`);

console.log('\none night, 84 steps of 600 s (median; tenth and ninetieth of a hundred in brackets)');
function printNight(name: string, night: NightTiming): void {
  console.log(`  ${name.padEnd(34)} ${String(night.nodes).padStart(4)} nodes  ${fixed(night.medianMs).padStart(7)} ms (${fixed(night.lowMs)}-${fixed(night.highMs)})  ${fixed(night.stepUs, 0).padStart(5)} us a step, ${fixed(night.iterationsAStep, 1)} iterations`);
}
printNight('two beds, double film', timeNight({}));
printNight('two beds, single film', timeNight({ layers: [{ film: 'standard' }] }));
printNight('two covered beds, drums, heater', timeNight({ beds: [{ name: 'a', area: 10, crops: ['kale'], cover: COVER }, { name: 'b', area: 10, crops: ['kale'], cover: COVER }], drums: [{ litres: 208, count: 4 }], heater: { kind: 'electric', power: 1000 } }));

console.log('\ngrowth with the number of covered beds');
const byBeds = [1, 2, 4, 8].map((beds) => {
  const night = timeNight({ beds: Array.from({ length: beds }, (_, b) => ({ name: `bed ${b}`, area: 20 / beds, crops: ['kale'], cover: COVER })) });
  printNight(`${beds} beds`, night);
  return { beds, night };
});
const growth = Math.log2(byBeds.at(-1)!.night.medianMs / byBeds[0]!.night.medianMs) / Math.log2(byBeds.at(-1)!.beds / byBeds[0]!.beds);
console.log(`  time grows as beds to the power ${fixed(growth)}`);

console.log('\nimplicit step against odex 2.0.4 (explicit extrapolation) at equal worst error over 14 h, same run');
for (const network of [AIR_AND_MASS, DRY_HOUSE, FILM_HOUSE]) {
  const c = compareWithOdex(network, 600);
  console.log(`  ${c.name.padEnd(26)} step of ${c.stepS} s: ${c.implicitErrorK.toExponential(1)} K in ${fixed(c.implicitMs, 3)} ms; odex: ${c.odexErrorK.toExponential(1)} K in ${fixed(c.odexMs, 3)} ms (${c.odexEvaluations} evaluations); odex takes ${fixed(c.ratio, 1)} times as long`);
}

console.log('\nthe whole evening, with fifteen days of warm-up');
for (const beds of [1, 2, 4]) {
  const evening = timeEvening(beds);
  console.log(`  ${beds} beds: ${evening.plans} plans, ${fixed(evening.medianMs, 0)} ms (${fixed(evening.lowMs, 0)}-${fixed(evening.highMs, 0)}), warm-up ${evening.warmUpHours} h`);
}
