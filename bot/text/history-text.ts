import type { Deed } from '../features/evening/deeds-tonight.js';
import type { PastNight, ReadLow, SaidLow, Thermometer } from '../features/record/past-nights.js';
import type { Item } from '../language/intent.js';
import { deedWords } from './deed-text.js';
import { thermometerWords } from './reading-text.js';
import { temperature, withRange, type TempUnits } from './temperature.js';

/** Each night in a line, the newest last, where the next message stands. `said` goes with the nights, for the thermometer. */
export function historyText(nights: readonly PastNight[], said: readonly (SaidLow | null)[], { thermometer, units }: { thermometer: Thermometer; units: TempUnits }): string {
  const isBlank = (night: PastNight, n: number): boolean => !said[n] && night.reads.length === 0 && night.told.length === 0;
  const first = nights.findIndex((night, n) => !isBlank(night, n));
  if (first < 0) return 'Nothing is kept of the last seven nights: no forecast, no reading, nothing done.';
  const lines = nights.map((night, n) => `- ${nightLine(night, said[n] ?? null, units)}`).slice(first);
  return [`Your last nights. Said: the low ${thermometerWords(thermometer)}, and where it should lie 8 times in 10.`, ...lines].join('\n');
}

/** The newest night alone. */
export const lastNightText = (night: PastNight, said: SaidLow | null, units: TempUnits): string => nightLine(night, said, units);

/** "Wed 18 Nov" */
const shortDay = (date: string): string => new Intl.DateTimeFormat('en-GB', { timeZone: 'UTC', weekday: 'short', day: 'numeric', month: 'short' }).format(Date.parse(`${date}T12:00:00Z`)).replace(',', '');

function nightLine({ date, reads, told }: PastNight, said: SaidLow | null, units: TempUnits): string {
  const parts = [said === null ? 'no forecast' : `said ${withRange(said, units)}`, reads.length === 0 ? 'not read' : `read ${reads.map((read) => readWords(read, units)).join(', ')}`];
  return `${shortDay(date)}: ${parts.join(', ')}.${toldWords(told)}`;
}

const JUDGED_WORDS = { good: '', 'not-reset': ' (not reset)', open: ' (with a question mark)' } as const satisfies Record<ReadLow['judged'], string>;
const readWords = ({ tempC, judged, ...thermometer }: ReadLow, units: TempUnits): string => `${temperature(tempC, units)} ${thermometerWords(thermometer)}${JUDGED_WORDS[judged]}`;

/** The newest word on a thing counts. */
function toldWords(told: PastNight['told']): string {
  const last = new Map<Item, boolean>();
  for (const { body, done } of told) for (const item of (JSON.parse(body) as Deed).items) last.set(item, done);
  const named = (done: boolean): string => [...last].filter(([, one]) => one === done).map(([item]) => deedWords(item)).join(', ');
  return [['Done', named(true)], ['Left', named(false)]].map(([word, items]) => (items === '' ? '' : ` ${word}: ${items}.`)).join('');
}
