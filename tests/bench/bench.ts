import { cpus } from 'node:os';
import { NO_TROUBLES } from '../../engine/night/controls.js';
import { celsiusToKelvin } from '../../engine/units.js';
import { EVERYTHING } from '../fixtures/everything-house.js';
import { AIR_AND_MASS, compareWithOdex, DRY_HOUSE, FILM_HOUSE } from './against-odex.js';
import { timeNight, type NightTiming } from './house-night.js';
import { timeJournal } from './journal-due.js';
import { timeEvening } from './whole-evening.js';

const COVER = { kind: 'fabric', weight: 30 } as const;
const fixed = (value: number, digits = 2): string => value.toFixed(digits);

console.log(`node ${process.version}, ${cpus().length} x ${cpus()[0]?.model ?? 'unknown processor'}`);

console.log('\none night, 84 steps of 600 s (median; tenth and ninetieth of a hundred in brackets)');
function printNight(name: string, night: NightTiming): void {
  console.log(`  ${name.padEnd(34)} ${String(night.nodes).padStart(4)} nodes  ${fixed(night.medianMs).padStart(7)} ms (${fixed(night.lowMs)}-${fixed(night.highMs)})  ${fixed(night.stepUs, 0).padStart(5)} us a step, ${fixed(night.iterationsAStep, 1)} iterations`);
}
const plain = timeNight({});
printNight('two beds, double film', plain);
printNight('two beds, single film', timeNight({ layers: [{ film: 'standard' }] }));
printNight('two covered beds, drums, heater', timeNight({ beds: [{ name: 'a', area: 10, crops: ['kale'], cover: COVER }, { name: 'b', area: 10, crops: ['kale'], cover: COVER }], drums: [{ litres: 208, count: 4 }], heater: { kind: 'electric', power: 1000 } }));
const everything = timeNight(EVERYTHING, { curtainDrawn: true, heaterOn: true, heaterSetK: celsiusToKelvin(10), fansOn: { tubes: true, 'stone-box': true, heap: false, air: true }, troubles: { ...NO_TROUBLES, roofSnowM: 0.05 } });
printNight('everything at once, all in use', everything);
console.log(`  everything takes ${fixed(everything.medianMs / plain.medianMs, 1)} times as long as the plain house`);

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

console.log('\nthe journal of 1000 chats, each with an update, a message and a job that are due (median of sixty)');
for (const nights of [2, 12]) {
  const journal = await timeJournal(1000, nights);
  console.log(`  ${journal.finishedRows} rows finished: 50 of open updates ${fixed(journal.openInboundMs)} ms, of due messages ${fixed(journal.dueOutboundMs)} ms, of due jobs ${fixed(journal.dueJobsMs)} ms; a send on disk ${fixed(journal.sendMs)} ms, an update kept and answered ${fixed(journal.updateMs)} ms`);
}
