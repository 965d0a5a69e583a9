import { UNDO } from './undo-text.js';

type Trip = 'easy' | 'annoying' | 'awful';

const money = (worth: number): string => String(Math.round(worth * 100) / 100);
const trips = (count: number): string => `${Math.round(count * 10) / 10} needless trip${count === 1 ? '' : 's'}`;
const wholeMinutes = (minutes: number): string => `${Math.round(minutes)} minute${Math.round(minutes) === 1 ? '' : 's'}`;
export const joinedWords = (words: readonly string[]): string => (words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)!}`);

/** The price of being called in time: said before anybody is asked, and to whoever has had enough calls. */
export const PRICE_OF_CALLS = 'Of 10 calls about 3 to 5 turn out not needed: that is the price of not losing the bed.';

const TRIP_COUNTS = { easy: 'its minutes count as they are', annoying: 'its minutes count one and a half times', awful: 'its minutes count two and a half times' } as const satisfies Record<Trip, string>;

const readily = (isMore: boolean): string => `${isMore ? 'more' : 'less'} readily`;

/** What was noted, one sentence for each. */
export const TOLERANCE_NOTED = {
  trips: (count: number): string => `One saved bed is worth ${trips(count)} to you.`,
  step: (count: number, before: number, isMore: boolean): string => `I call you out ${readily(isMore)}${count === before ? '' : `: I count one saved bed as worth ${trips(count)} now, not ${before}`}.`,
  counted: (count: number, before: number): string => `I counted ${before} until now: I call you out ${readily(count > before)}.`,
  bound: (count: number, said: number): string => (said > count ? `More than ${count} change nothing: I cannot call more readily.` : `Fewer than ${count} change nothing: I cannot call more seldom.`),
  same: (count: number): string => `I count one saved bed as worth ${trips(count)}, as before.`,
  most: (count: number): string => `I am as careful as my words go: I count one saved bed as worth ${trips(count)}. For more, say a greater number of trips.`,
  least: (count: number): string => `I am as relaxed as my words go: I count one saved bed as worth ${trips(count)}. For less, say a smaller number of trips.`,
  trip: (trip: Trip): string => `Going out is ${trip} for you: ${TRIP_COUNTS[trip]}.`,
  minutes: (minutes: number, beds: readonly string[] | null): string => `Covering ${beds === null ? '' : `${joinedWords(beds)} `}takes you ${wholeMinutes(minutes)}.`,
  worth: (worth: number, what: readonly string[], each: number | null): string => `${capital(joinedWords(what))} ${what.length > 1 ? 'are' : 'is'} worth ${money(worth)} to you${each === null ? '' : `, ${money(each)} in each place`}.`,
  hour: (worth: number): string => `An hour of your time counts as ${money(worth)}.`,
} as const;

const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

/** What could not be noted. */
export const TOLERANCE_REFUSED = {
  unknown: 'I know of no such crop or bed. Say for example "kale in the north bed" first.',
  tooLong: (most: number): string => `I cannot count more than ${wholeMinutes(most)} for covering: it has to fit between noon and dark. Say for example "covering takes 20 minutes".`,
  noCover: 'I know of no cover there. Say for example "30 g/m2 cover on the north bed" first.',
} as const;

export const toleranceNoted = (notes: readonly string[]): string => `Noted. ${notes.join(' ')}`;

/** Needless trips as they are counted now, and what the words for care come to. */
interface TripsCounted {
  readonly trips: number;
  readonly named: Readonly<Record<'relaxed' | 'normal' | 'careful' | 'never-lose-it', number>>;
}

export const TOLERANCE_ASKS = {
  opening: `${PRICE_OF_CALLS} Short questions set how readily I call you. Say "skip" to leave one out, "later" to leave them all.`,
  worth: (what: string): string => `If frost took ${what}: what would it cost you to be whole again? Say money, or the weeks to regrow and what you pick a week.`,
  weekly: 'What is a week of picking there worth to you, in money?',
  trip: (hasCovers: boolean): string => `How bad is it to go out there on a cold evening: easy, annoying or awful?${hasCovers ? ' Add the minutes that covering takes: "annoying, 20 minutes".' : ''}`,
  trips: ({ trips: now, named }: TripsCounted): string => `How many needless trips is one saved bed worth to you? I count ${now} now. The relaxed say ${named.relaxed}, the careful ${named.careful}. Who must never lose one says ${named['never-lose-it']}.`,
  done: 'That is all. Say "settings" to see it.',
  over: 'That question is over. Say "ask me" to be asked again.',
  later: 'As you like. Say "ask me" when you want the questions.',
} as const;

/** The usual answers, as they stand on buttons. */
export const TOLERANCE_BUTTONS = { worth: ['Skip'], weekly: ['Skip'], trip: ['Easy', 'Annoying', 'Awful', 'Skip'], trips: ({ named }: TripsCounted): readonly string[] => [...new Set(Object.values(named).sort((a, b) => a - b).map(String)), 'Skip'] } as const;

/** What a word of the grower has just moved; nothing where it moved nothing. */
export const TOLERANCE_MOVED = {
  left: 'From now on I call you out a little less readily.',
  lost: 'I had not called you that night: from now on I call you out more readily.',
} as const;

/** Put with what was said of the word itself, before how to take both back. */
export const withMoved = (said: string, moved: readonly string[]): string => (moved.length === 0 ? said : [said.replace(` ${UNDO}`, ''), ...moved, UNDO].join(' '));

/** How readily the grower is called out, as it stands. */
export interface ToleranceView {
  readonly trips: number;
  readonly trip: Trip;
  /** To cover all beds; null where none has a cover. */
  readonly coverMinutes: number | null;
  readonly hourWorth: number;
  readonly crops: readonly { readonly crop: string; readonly worth: number; readonly isGiven: boolean }[];
  readonly nights: { readonly left: number; readonly lost: number };
}

const times = (count: number): string => (count === 1 ? 'once' : `on ${count} nights`);

/** Each of it with the words that change it. */
export function toleranceLines({ trips: count, trip, coverMinutes, hourWorth, crops, nights }: ToleranceView): readonly string[] {
  const moved = [...(nights.left > 0 && hourWorth > 0 ? [`You left my call ${times(nights.left)}: I call you out less readily.`] : []), ...(nights.lost > 0 ? [`Frost took something ${times(nights.lost)} without a call: I call you out more readily.`] : [])];
  const worths = (given: boolean): string => crops.filter(({ isGiven }) => isGiven === given).map(({ crop, worth }) => `${crop} ${given ? money(worth) : Math.round(worth)}`).join(', ');
  const [known, guessed] = [worths(true), worths(false)];
  return [
    `- Care: I count one saved bed as worth ${trips(count)}.${moved.length === 0 ? '' : ` ${moved.join(' ')}`} To change: "be more careful", "${count + 10} trips for a saved bed".`,
    `- Going out: ${trip}${coverMinutes === null ? '' : `, ${wholeMinutes(coverMinutes)} to cover all`}, an hour counted as ${money(hourWorth)}. To change: "the trip is awful", "covering takes 20 minutes".`,
    ...(crops.length === 0 ? [] : [`- Worth: ${[known, ...(guessed === '' ? [] : [`${guessed} (my guess by the size of the bed)`])].filter((one) => one !== '').join('; ')}. To change: "the ${crops[0]!.crop} is worth 60".`]),
    '- To be asked about care, going out and worth: "ask me".',
  ];
}
