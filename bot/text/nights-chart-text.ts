import type { Thermometer } from '../features/record/past-nights.js';
import { thermometerWords } from './reading-text.js';

/** All words of the picture of past nights. The picture is read at a third of its size: few and short. */

export const nightsLine = ({ place, name }: Thermometer, count: number): string => `Lows ${name === null ? thermometerWords({ place, name }) : name}: ${count} nights, said and read`;

/** Under a night: "18 Nov", or "Wed 18" where there is one for each. */
export const nightTick = (date: string, isWeek: boolean): string =>
  new Intl.DateTimeFormat('en-GB', { timeZone: 'UTC', day: 'numeric', ...(isWeek ? { weekday: 'short' } : { month: 'short' }) }).format(Date.parse(`${date}T12:00:00Z`)).replace(',', '');

/** What the marks mean. */
export const NIGHTS_LEGEND = {
  said: 'said: 8 in 10 in the bar',
  inside: 'read, in the bar',
  outside: 'read, outside it',
  bound: 'not reset: no colder',
  leftOut: 'not as planned, or not told',
  alone: 'read, nothing said',
} as const;
export type LegendMark = keyof typeof NIGHTS_LEGEND;

const SERVICES: Readonly<Record<string, string>> = { 'open-meteo': 'Open-Meteo.com', 'met-norway': 'MET Norway (met.no)' };

/** The licences of the weather behind the bars ask for this; several services may have given it. */
export function nightsAttribution(sources: readonly string[]): readonly string[] {
  const services = sources.flatMap((source) => SERVICES[source] ?? []);
  if (services.length === 0) return sources.includes('demo') ? ['Invented weather, our own model of the house.'] : [];
  return [...services.map((service, n) => `${n === 0 ? 'Weather data by' : 'and by'} ${service}, CC BY 4.0,`), 'changed by our own model of the house.'];
}
