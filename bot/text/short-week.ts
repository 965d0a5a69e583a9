import type { Week, WeekNight } from '../features/outlook/week.js';
import { beyondForecast } from './outlook-text.js';
import { fitsSms } from './short-form.js';
import { temperature, type TempUnits } from './temperature.js';

/** The nights ahead in one plain text message: the cold spell, the lows inside, what is threatened. */
export function shortWeek({ nights, spell, weather }: Week, units: TempUnits): string {
  if (nights.length === 0) return beyondForecast(null);
  const first = spell === null ? 'No cold spell in sight.' : `Cold spell: ${spell.nights} nights from ${spell.fromDay}, worst ${spell.worstDay}.`;
  const old = weather.stale ? ' OLD FORECAST.' : '';
  const lows = nights.map((night) => `${night.day.slice(0, WEEKDAY)} ${temperature(night.inside.q50, units)}${isThreatened(night) ? '!' : ''}`);
  const hint = nights.some(isThreatened) ? ' (! = a crop at risk)' : '';
  for (let count = lows.length; count > 0; count -= 1) {
    const text = `${first}${old} Lows inside: ${lows.slice(0, count).join(', ')}${hint}.`;
    if (fitsSms(text)) return text;
  }
  return `${first}${old}`;
}

/** "Wed" */
const WEEKDAY = 3;
const isThreatened = ({ crops }: WeekNight): boolean => crops.some(({ usual }) => usual.verdict === 'at-risk' || usual.verdict === 'likely-lost');
