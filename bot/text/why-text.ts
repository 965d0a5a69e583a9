import type { Advisory, AdvisoryHeat, AdvisoryReason, HeatFrom, HeatTo } from '../features/evening/advisory.js';
import { reasonSentence } from './reason-text.js';
import { temperature, temperatureDifference, type TempUnits } from './temperature.js';

const CLEAR_BELOW = 0.25;
const CLOUDY_FROM = 0.75;
/** Less of all heat than this is not worth a word (project estimate). */
const WORTH_NAMING = 0.05;
const KM_PER_H = 3.6;
const MILES_PER_H = 2.236_936;
/** Half a degree or less is no difference that a grower can count on. */
const SAME_C = 0.5;

const TO_WORDS = { sky: 'to the sky', outside: 'into the air outside', gaps: 'out through gaps' } as const satisfies Record<HeatTo, string>;
/** The film may be colder than the air outside. */
const FROM_WORDS = { ground: 'the ground', water: 'the drums', stones: 'the stones', heater: 'the heater', compost: 'the compost', outside: 'the air outside (the film is colder)' } as const satisfies Record<HeatFrom, string>;

/** Why the night comes as it does: a few sentences with the numbers of its own simulation. */
export function whyText({ places, reasons }: Pick<Advisory, 'places' | 'reasons'>, words: { units: TempUnits; cropName: (id: string) => string }): string {
  const heat = reasons.find((reason) => reason.code === 'heat');
  return [...lowSentence(places, words.units), ...(heat === undefined ? [] : heatSentences(heat, soilC(places), words.units)), ...planSentence(reasons, words), ...(heat === undefined ? [] : [`The forecast for outside may be ${temperatureDifference(heat.forecastOffC, words.units)} off either way.`])].join('\n');
}

/** Low of the soil at root depth, mean of the beds. */
function soilC(places: Advisory['places']): number | null {
  const lows = places.filter(({ place }) => place === 'soil').map(({ lowC }) => lowC.q50);
  return lows.length === 0 ? null : lows.reduce((sum, low) => sum + low, 0) / lows.length;
}

function lowSentence(places: Advisory['places'], units: TempUnits): readonly string[] {
  const [inside, outside] = (['inside', 'outside'] as const).map((name) => places.find(({ place }) => place === name)?.lowC.q50);
  if (inside === undefined || outside === undefined) return [];
  const apart = Math.abs(inside - outside) <= SAME_C ? 'about as cold as outside' : `${temperatureDifference(Math.abs(inside - outside), units)} ${inside > outside ? 'warmer' : 'colder'} than outside`;
  return [`I expect about ${temperature(inside, units)} inside at the coldest, ${apart}.`];
}

function heatSentences({ cloud, windMPerS, lostW, to, from }: AdvisoryHeat, rootsC: number | null, units: TempUnits): readonly string[] {
  const sky = cloud < CLEAR_BELOW ? 'The sky is clear' : cloud >= CLOUDY_FROM ? 'Cloud covers the sky' : 'The sky is partly clear';
  const wind = units === 'F' ? `${Math.round(windMPerS * MILES_PER_H)} mph` : `${Math.round(windMPerS * KM_PER_H)} km/h`;
  const [most, ...others] = shares(to, TO_WORDS);
  const [giver, ...givers] = shares(from, FROM_WORDS);
  const goes = most === undefined ? '' : `: the house loses about ${Math.round(lostW / 100) / 10} kW, ${[`${most.parts} ${most.where}`, ...others.map(({ tenths, where }) => `${tenths} ${where}`)].join(', ')}`;
  return [`${sky}, the wind about ${wind}${goes}.`, ...(giver === undefined ? [] : [`${[`${capital(giver.where)}${giver.where === FROM_WORDS.ground && rootsC !== null ? ` (${temperature(rootsC, units)} at root depth)` : ''} gives ${giver.parts}`, ...givers.map(({ tenths, where }) => `${where} ${tenths}`)].join(', ')}.`])];
}

/** What is worth naming, the greatest first: in tenths of all, and said so for the first. */
function shares<Name extends string>(of: Readonly<Record<Name, number>>, words: Readonly<Record<Name, string>>): readonly { readonly tenths: number; readonly parts: string; readonly where: string }[] {
  const named = (Object.keys(words) as Name[]).filter((name) => of[name] >= WORTH_NAMING).sort((a, b) => of[b] - of[a]);
  const tenths = wholeTenths(named.map((name) => of[name]));
  return named.map((name, n) => ({ tenths: tenths[n]!, parts: tenths[n]! >= TENTHS ? 'all of it' : `${tenths[n]} of 10 parts`, where: words[name] })).filter((share) => share.tenths > 0);
}

const TENTHS = 10;

/** Shares of a whole in tenths that together make no more of it than they are: the rest goes to those that were cut short most. */
function wholeTenths(shares: readonly number[]): readonly number[] {
  const cut = shares.map((share) => Math.floor(TENTHS * share));
  const left = Math.round(TENTHS * shares.reduce((sum, share) => sum + share, 0)) - cut.reduce((sum, tenths) => sum + tenths, 0);
  const shortest = [...shares.keys()].sort((a, b) => TENTHS * shares[b]! - cut[b]! - (TENTHS * shares[a]! - cut[a]!)).slice(0, left);
  return cut.map((tenths, n) => tenths + (shortest.includes(n) ? 1 : 0));
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** The crop that the plan helps most, else why there is none. */
function planSentence(reasons: readonly AdvisoryReason[], words: { units: TempUnits; cropName: (id: string) => string }): readonly string[] {
  const helped = reasons.filter((reason) => reason.code === 'plan-helps').sort((a, b) => b.withoutDamageProbability - b.withDamageProbability - (a.withoutDamageProbability - a.withDamageProbability));
  const [reason] = [...helped, ...reasons.filter(({ code }) => code === 'choice')];
  const sentence = reason === undefined ? null : reasonSentence(reason, words);
  return sentence === null ? [] : [sentence];
}
