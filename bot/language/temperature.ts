import { unclear, type Unclear, type Units } from './intent.js';
import { localNow } from './local-now.js';
import type { TempToken } from './value-grammar.js';

const LEAST_C = -60;
const MOST_C = 60;
/** Bare numbers in this span read like °F when a frost is near, whoever writes them. */
const LIKE_FAHRENHEIT = { least: 20, most: 60 };
/** What a house or a thermometer in the sun can reach on a winter day, and a high is said of: project estimate. */
export const WARM_DAY_C = 35;

/** To hundredths, and never minus zero. */
const rounded = (value: number): number => Math.round(value * 100) / 100 + 0;

export const celsius = (value: number, unit: Units): number => rounded(unit === 'C' ? value : ((value - 32) * 5) / 9);

/** The number as meant, in its unit: "2 below" is -2, "2 below freezing" lies below the freezing point of its unit. */
export function signedValue(token: TempToken, unit: Units): number {
  const freezing = unit === 'F' ? 32 : 0;
  if (token.against === 'below-freezing') return freezing - token.value;
  if (token.against === 'above-freezing') return freezing + token.value;
  return token.sign === 'minus' || token.against === 'below-zero' ? -token.value : token.value;
}

/** False only in the months that are surely summer, by the way the zone moves its clocks. */
export function isFrostySeason(atS: number, zone: string): boolean {
  const now = localNow({ atS, zone });
  const january = now.set({ month: 1, day: 15 }).offset;
  const july = now.set({ month: 7, day: 15 }).offset;
  if (january === july) return true;
  return january < july ? now.month < 6 || now.month > 8 : now.month > 2 && now.month < 12;
}

export interface TempSetting {
  readonly units: Units;
  readonly atS: number;
  readonly zone: string;
  /** All numbers of the message that may be temperatures: they are mostly in one unit. */
  readonly among: readonly TempToken[];
  /** A greenhouse by day, or a thermometer in the sun, can really be above 20 °C. */
  readonly canBeWarm?: boolean;
}

/** A temperature in °C, or what must be asked because the number could mean two things or nothing. */
export function temperature(token: TempToken, setting: TempSetting): { readonly c: number } | Unclear {
  const word = token.text.trim();
  if (token.comma) return unclear('which-number', { word });
  if (token.sign === 'range') return unclear('which-number', { word });
  if (token.sign === 'joined' || token.sign === 'loose') return unclear('which-sign', { word, choices: [`-${token.value}`, `${token.value}`] });
  const others = new Set(setting.among.map(({ unit }) => unit).filter((unit) => unit !== null));
  const unit = token.unit ?? setting.units;
  if (token.unit === null) {
    if (others.size > 0 && !others.has(setting.units)) return unclear('which-unit', { word, choices: ['C', 'F'] });
    const shown = signedValue(token, 'C');
    const plain = token.against === null && shown >= LIKE_FAHRENHEIT.least && shown <= LIKE_FAHRENHEIT.most;
    // With a plainly Celsius number beside it, a warm afternoon is believed.
    const besideCold = setting.canBeWarm === true && setting.among.some((other) => other !== token && other.unit === null && signedValue(other, 'C') < 10);
    const isWarmDay = setting.canBeWarm === true && shown <= WARM_DAY_C;
    if (unit === 'C' && plain && !besideCold && !isWarmDay && !others.has('C') && isFrostySeason(setting.atS, setting.zone)) return unclear('which-unit', { word, choices: ['C', 'F'] });
  }
  const c = celsius(signedValue(token, unit), unit);
  // Too hot for any house in °C, but a common day in °F.
  if (token.unit === null && unit === 'C' && c > MOST_C && celsius(c, 'F') <= MOST_C) return unclear('which-unit', { word, choices: ['C', 'F'] });
  return c < LEAST_C || c >= MOST_C ? unclear('impossible-temperature', { word }) : { c };
}
