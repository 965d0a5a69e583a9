import { meanings, type Intent } from '../../bot/language/intent.js';

const LEAST_C = -60;
const MOST_C = 70;
const NUMBER_WORD = /zero|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|teen|twenty|thirty|fou?rty|fifty|sixty|seventy|eighty|ninety|thrity|thirdy|twnety|twe?nn?y|fiften|ninteen|eigth|eihgt|half|½|\ba de+g/i;
const HUNDREDTH = 0.0051;

/** The temperatures that a message stores, whether as readings or as a correction. */
const stored = (intent: Intent): readonly number[] => meanings(intent).flatMap((one) => (one.kind === 'reading' ? one.readings.map(({ c }) => c) : one.kind === 'fix' && one.c !== undefined ? [one.c] : []));

/** Every temperature in °C that the digits of a text could stand for, in either unit, sign or against freezing. */
function possible(text: string): readonly number[] {
  const digits = text.replace(/½|(?<!\d)1\/2(?!\d)/g, ' ');
  const found = [...digits.matchAll(/\d+(?:[.,]\d+)?|[.,]\d+/g)].flatMap(([written]) => [written, ...written.split(/[.,]/)]).map((written) => Number(`0${written}`.replace(',', '.').replace(/^0+(?=\d)/, '')));
  const halves = /½|1\/2|half/i.test(text) ? [0, 0.5] : [0];
  const values = [...found, ...halves.slice(1)].flatMap((value) => halves.map((half) => value + half)).flatMap((value) => [value, -value, 32 - value, 32 + value]);
  return values.flatMap((value) => [value, ((value - 32) * 5) / 9]);
}

/** What must never happen to any message; null where it did not. */
export function wrongWith(text: string, intent: Intent): string | null {
  const temperatures = stored(intent);
  if (temperatures.length === 0) return null;
  if (temperatures.some((c) => !(c >= LEAST_C && c <= MOST_C))) return 'a temperature out of range';
  if (/^\s*\/start|^\s*start\b\s*\S+\s*$/i.test(text)) return 'a temperature from a start code';
  // Digits of other scripts are not read here: they only count as a number.
  const hasWord = NUMBER_WORD.test(text) || /(?!\d)\p{Nd}/u.test(text);
  if (!/\d/.test(text) && !hasWord) return 'a temperature from no number';
  const could = possible(text);
  return !hasWord && temperatures.some((c) => !could.some((value) => Math.abs(value - c) < HUNDREDTH)) ? 'a temperature that is not in the message' : null;
}
