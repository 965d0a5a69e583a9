import { degrees, EXAMPLE, temperature, type TempUnits } from './temperature.js';

const PLACE_WORDS: Readonly<Record<string, string>> = { inside: 'inside', outside: 'outside', cover: 'under the cover', soil: 'in the soil', water: 'in the water', stones: 'in the stones', tube: 'in the ground tube' };

/** A thermometer by its own name, with the place where the name does not tell it. */
export const thermometerWords = ({ place, name }: { readonly place: string; readonly name: string | null }): string => {
  const where = PLACE_WORDS[place] ?? place;
  return name === null || name === place ? where : `at "${name}" (${where})`;
};

/** "Tuesday" of the past week, "Tue 17 Nov" of before. */
export function nightWords(date: string, today: string): string {
  const at = (day: string): number => Date.parse(`${day}T12:00:00Z`);
  const isNear = at(today) - at(date) < WEEK_MS;
  return new Intl.DateTimeFormat('en-GB', { timeZone: 'UTC', ...(isNear ? { weekday: 'long' } : { weekday: 'short', day: 'numeric', month: 'short' }) }).format(at(date)).replace(',', '');
}
const WEEK_MS = 6.5 * 86_400_000;

/** A reading as it is read back. */
export interface ReadBack {
  readonly tempC: number;
  readonly statistic: 'now' | 'low' | 'high';
  readonly judged: 'good' | 'not-reset' | 'sunlit' | 'open';
  readonly thermometer: { readonly place: string; readonly name: string | null };
  /** In words: "Tuesday". */
  readonly night: string;
  /** Of a reading that is of one moment: "19:30". */
  readonly clock: string;
  readonly forecastC: number | null;
}

/** "Noted: 21F inside, low of the night of Tuesday. Forecast was 23F: 2 too warm." */
export function readBack(reading: ReadBack, units: TempUnits, lead: 'Noted' | 'Corrected' = 'Noted'): string {
  const { statistic, tempC, judged, thermometer, night, clock, forecastC } = reading;
  const value = temperature(tempC, units);
  const where = thermometerWords(thermometer);
  const said = `${lead}: ${value} ${where}${statistic === 'low' ? `, low of the night of ${night}` : statistic === 'high' ? ', high' : ` at ${clock}`}.`;
  if (judged === 'sunlit') return `${said} In the sun a thermometer shows more than the air has: I keep it, and learn nothing from it.`;
  if (judged === 'not-reset') return `${said} It showed that before, and I expected ${forecastC === null ? 'another' : temperature(forecastC, units)}: I take it that it was not reset, so that the night was no colder. If it was reset, say "it was reset".`;
  return statistic === 'low' && forecastC !== null ? `${said} ${forecastWords(forecastC, tempC, units)}` : said;
}

function forecastWords(forecastC: number, tempC: number, units: TempUnits): string {
  const rounded = (valueC: number): number => Number(degrees(valueC, units));
  const missed = rounded(forecastC) - rounded(tempC);
  const by = String(Math.abs(Math.round(missed * 10) / 10));
  return `Forecast was ${temperature(forecastC, units)}: ${Number(by) === 0 ? 'right' : `${by} too ${missed > 0 ? 'warm' : 'cold'}`}.`;
}

export const undoHint = (units: TempUnits): string => `Wrong? Say "undo", or send it right: "sorry, ${units === 'F' ? '27F' : '-3C'}".`;

const number = (value: number, unit: TempUnits): string => `${Number(value.toFixed(1)) + 0}${unit}`;
/** The number as it was typed: no rounding hides the slip. */
export const asTypedWords = (value: number, unit: TempUnits): string => number(value, unit);

/** A choice in words. */
export interface ChoiceWords {
  readonly judged: 'good' | 'not-reset' | 'sunlit';
  readonly tempC: number;
  readonly meant?: { readonly value: number; readonly unit: TempUnits };
}

const choiceLabel = ({ judged, tempC, meant }: ChoiceWords, typed: string, units: TempUnits): string => {
  if (judged === 'sunlit') return 'It was in the sun';
  if (judged === 'not-reset') return 'It was not reset';
  if (meant === undefined) return `${typed} is right`;
  const said = number(meant.value, meant.unit);
  return meant.unit === units ? said : `${said} (${temperature(tempC, units)})`;
};

/** What is asked about one reading, with its answers. */
export interface QuestionWords {
  readonly reading: ReadBack;
  /** "64F" */
  readonly typed: string;
  readonly reason: 'impossible' | 'contradicts' | 'unlikely';
  readonly isSuggestionLikely: boolean;
  readonly choices: readonly ChoiceWords[];
}

const KEPT_OPEN = 'Until then it has a question mark, and I learn nothing from it.';

/** The question, and the words of its answers in order. */
export function readingQuestion({ reading, typed, reason, isSuggestionLikely, choices }: QuestionWords, units: TempUnits): { readonly text: string; readonly answers: readonly string[] } {
  const where = `${reading.statistic === 'low' ? 'as the low ' : ''}${thermometerWords(reading.thermometer)}`;
  const why = {
    impossible: `That cannot be a temperature in a greenhouse. Send it like ${EXAMPLE[units].bare}.`,
    contradicts: 'The same thermometer showed less that night, so that cannot be its lowest.',
    unlikely: reading.forecastC === null ? 'That is far from what I expected.' : `I expected about ${temperature(reading.forecastC, units)}.`,
  }[reason];
  const answers = choices.map((choice) => choiceLabel(choice, typed, units));
  const [first] = choices;
  const ask = !isSuggestionLikely || first === undefined ? (choices.length === 0 ? '' : 'Is that right?') : first.judged === 'sunlit' ? 'Was it in the sun?' : first.judged === 'not-reset' ? 'Was it not reset?' : `Did you mean ${answers[0]!}?`;
  const listed = answers.map((answer, at) => `${at + 1}: ${answer}`);
  const how = answers.length > 1 ? `Answer ${answers.map((_, at) => at + 1).join(' or ')}, or send the right number. ${KEPT_OPEN}` : answers.length === 1 ? `Say "yes", or send the right number. ${KEPT_OPEN}` : KEPT_OPEN;
  return { text: [[`${typed} ${where}?`, why, ask].filter((part) => part !== '').join(' '), ...(answers.length > 1 ? listed : []), how].join('\n'), answers };
}

export const READING_WORDS = {
  askAgain: (typed: string): string => `Then what does it show? Send the number, say "really ${typed}", or "drop it".`,
  staysOpen: (typed: string): string => `Then ${typed} stays with a question mark, and I learn nothing from it.`,
  dropped: (typed: string): string => `Dropped: ${typed} no longer counts.`,
  takenBack: (readings: readonly string[]): string => `Taken back: ${readings.join('; ')}. That no longer counts.`,
  settledAlready: 'That question is answered already.',
  whichThermometer: (word: string, names: readonly string[]): string => `"${word}": which thermometer is that? ${names.join(', ')}?`,
  places: ['inside', 'outside', 'under the cover'],
} as const;

/** The value, place and night of a reading in few words, for what is taken back. */
export const shortReading = ({ tempC, statistic, thermometer }: Pick<ReadBack, 'tempC' | 'statistic' | 'thermometer'>, units: TempUnits): string =>
  `${statistic === 'now' ? '' : `${statistic} `}${temperature(tempC, units)} ${thermometerWords(thermometer)}`;
