import { kelvinToFahrenheitDegrees } from '../../engine/index.js';
import type { CallRecord, NeedCount } from '../features/record/call-record.js';
import type { ThermometerRecord } from '../features/record/thermometer-record.js';
import type { VerdictRecord } from '../features/record/verdict-record.js';
import { inTen } from './chance.js';
import { thermometerWords } from './reading-text.js';
import { EXAMPLE, type TempUnits } from './temperature.js';

/** Fewer nights say next to nothing; with fewer than the second number the range of what may be is worth saying (project estimates). */
const FEW = 5;
const SOME = 20;
/** So unlikely a count is no chance any more. */
const UNLIKELY = 0.05;
/**
 * Of a verdict: 0.05 shared over four words and both tails is 0.006, and a little less because it is looked at again and again (project estimate).
 * Where chances are sound, some 2 of 100 winters then end with such a claim and 6 make it at one of nine looks; with 0.05 it would be 25 and 54
 * (300 invented winters of 90 nights and four crops).
 */
const UNLIKELY_VERDICT = 0.005;

export interface RecordWords {
  readonly main: ThermometerRecord;
  readonly others: readonly ThermometerRecord[];
  readonly calls: CallRecord;
  readonly verdicts: VerdictRecord;
}

/** How right the forecasts were: the count first, then what it means, then whether calls were needed and how verdicts held, then what was left out. */
export function recordText({ main, others, calls, verdicts }: RecordWords, units: TempUnits): string {
  const judged = others.flatMap(({ record, thermometer }) => (record === null ? [] : [otherLine(record, thermometerWords(thermometer), units)]));
  return [...mainLines(main, units), ...callLines(calls), ...verdictLines(verdicts), ...howJudged(calls, verdicts), ...boundLines(main.bounds), ...leftOutLine(main.leftOut), ...judged].join('\n');
}

type Judged = NonNullable<ThermometerRecord['record']>;

function mainLines({ record, thermometer, leftOut }: ThermometerRecord, units: TempUnits): readonly string[] {
  if (record !== null) return [countSentence(record, thermometerWords(thermometer)), verdict(record), missSentence(record, units)];
  if (leftOut.otherwise + leftOut.notTold > 0) return ['I cannot tell yet: I have no low of a night of which I know that it went as planned.', 'Tell me "done" or "not tonight" in the evening.'];
  return ['I cannot tell yet: for no night do I have both my forecast and a low that counts.', `Send the lowest each morning, for example ${EXAMPLE[units].low}.`];
}

function countSentence({ coverage: { inside, nights } }: Judged, where: string): string {
  if (nights === 1) return `On the one night so far the low ${where} lay ${inside === 1 ? 'in' : 'outside'} my range.`;
  return `On ${inside === nights ? 'all' : inside === 0 ? 'none' : inside} of ${nights} nights the low ${where} lay in my range. It should on 4 of 5.`;
}

function verdict({ coverage, chanceOfSoMany }: Judged): string {
  const { nights, low, high, chanceOfSoFew } = coverage;
  if (nights < FEW) return 'Too few nights to tell: ask again after ten.';
  if (chanceOfSoFew < UNLIKELY) return 'That is too few to be chance: my ranges are too narrow here. Leave a margin.';
  if (chanceOfSoMany < UNLIKELY) return 'That is more than it should be: my ranges are wider than they need to be.';
  if (nights < SOME) return `So far that fits, but ${nights} nights leave much open: ${Math.round(10 * low)} to ${Math.round(10 * high)} in 10 may be the truth.`;
  return 'That is as it should be.';
}

const degrees = (differenceK: number, units: TempUnits): string => {
  const size = Math.round(10 * Math.abs(units === 'F' ? kelvinToFahrenheitDegrees(differenceK) : differenceK)) / 10;
  return `${size} ${size === 1 ? 'degree' : 'degrees'} ${units}`;
};

function missSentence({ coverage: { nights }, meanMissK, lean }: Judged, units: TempUnits): string {
  const miss = `My middle was off by ${degrees(meanMissK, units)}${nights === 1 ? '' : ' on average'}.`;
  if (nights < FEW || lean === null) return miss;
  if (lean.lowK > 0) return `${miss} It came colder than I said, by ${degrees(lean.meanK, units)} on average.`;
  if (lean.highK < 0) return `${miss} It came warmer than I said, by ${degrees(lean.meanK, units)} on average.`;
  return `${miss} I see no lean to the warm or the cold side.`;
}

function callLines({ called, quiet }: CallRecord): readonly string[] {
  return [
    ...(called.nights === 0 ? [] : [`I asked for work on ${nightsWord(called.nights)}. Without it, something would have been marked on ${countOf(called)}. ${expectedWords(called)}`]),
    ...(quiet.nights === 0 ? [] : [`On ${nightsWord(quiet.nights)} I asked for no work. It got cold enough to mark something on ${countOf(quiet)}. ${expectedWords(quiet)}`]),
  ];
}

const countOf = ({ needed, nights }: NeedCount): string => (needed === 0 ? 'none' : needed === nights ? (nights === 1 ? 'it' : `all ${nights}`) : String(needed));

const expectedWords = ({ expected }: NeedCount): string => `I had reckoned on ${Math.round(expected) === 0 ? 'one at most' : `about ${Math.round(expected)}`}.`;

const VERDICT_WORDS = { safe: 'safe', watch: 'watch', 'at-risk': 'at risk', 'likely-lost': 'likely lost' } as const satisfies Record<VerdictRecord[number]['spokenAs'], string>;

/** One crop on one night counts once. */
function verdictLines(verdicts: VerdictRecord): readonly string[] {
  const few = verdicts.filter(({ nights }) => nights < FEW).map(({ spokenAs }) => `"${VERDICT_WORDS[spokenAs]}"`);
  const isAll = few.length === verdicts.length;
  return [...verdicts.map(verdictLine), ...(few.length === 0 ? [] : [`Too few nights yet to judge ${isAll ? 'that' : few.join(' and ')}.`])];
}

function verdictLine({ spokenAs, cases, happened, meanChance, nights, chanceOfSoFew, chanceOfSoMany, isTold }: VerdictRecord[number]): string {
  const cropNights = `of ${cases} crop ${cases === 1 ? 'night' : 'nights'}`;
  if (spokenAs === 'safe' && happened === 0) return `When I said safe, ${isTold ? 'nothing was marked' : 'it never got cold enough for marks'}: ${cases} ${cropNights}.`;
  const count = `When I said ${VERDICT_WORDS[spokenAs]}, it got cold enough for marks on ${happened === 0 ? 'none' : happened} ${cropNights}. I had given ${inTen(meanChance)}.`;
  if (nights < FEW) return count;
  if (chanceOfSoMany < UNLIKELY_VERDICT) return `${count} That is too often to be chance: take more care than I say.`;
  // No advice: it could only be to take less care.
  return chanceOfSoFew < UNLIKELY_VERDICT ? `${count} That is too seldom to be chance.` : count;
}

/** Mostly nobody has looked at the plants. */
function howJudged({ called, quiet }: CallRecord, verdicts: VerdictRecord): readonly string[] {
  return called.nights + quiet.nights + verdicts.length === 0 ? [] : ['I go by your lows, what you told of the plants, and my crop temperatures.'];
}

const nightsWord = (count: number): string => `${count} ${count === 1 ? 'night' : 'nights'}`;

function boundLines({ fit, warmer }: ThermometerRecord['bounds']): readonly string[] {
  const line = (count: number, what: string): readonly string[] => (count === 0 ? [] : [`On ${nightsWord(count)} more the thermometer was not reset: it was no colder than it shows, and ${what}.`]);
  return [...line(fit, 'that fits what I said'), ...line(warmer, 'so warmer than my range')];
}

function leftOutLine({ otherwise, notTold, open }: ThermometerRecord['leftOut']): readonly string[] {
  const parts = [...(otherwise === 0 ? [] : [`${nightsWord(otherwise)} on which you did otherwise than planned`]), ...(notTold === 0 ? [] : [`${nightsWord(notTold)} on which I was not told what was done`]), ...(open === 0 ? [] : [`${nightsWord(open)} whose low still has a question mark`])];
  return parts.length === 0 ? [] : [`Left out: ${parts.join(', ')}.`];
}

const otherLine = ({ coverage: { inside, nights }, meanMissK }: Judged, where: string, units: TempUnits): string =>
  `${where.charAt(0).toUpperCase()}${where.slice(1)}: in my range on ${inside} of ${nightsWord(nights)}, off by ${degrees(meanMissK, units)}.`;
