import type { Outgoing } from '../chat.js';

/** Places of one text message in the plain alphabet (3GPP TS 23.038). */
export const SMS_PLACES = 160;
/** These take two places each. */
const EXTENDED = /[\f^{}\\[~\]|]/gu;

const smsPlaces = (text: string): number => text.length + (text.match(EXTENDED)?.length ?? 0);
export const fitsSms = (text: string): boolean => smsPlaces(text) <= SMS_PLACES;

const SENTENCE_ENDS = /(?<=[.!?]["')]?)\s+(?=["'(A-Z0-9])/u;
const CUT = '...';
/** Less than this says nothing: then it ends at a word. */
const LEAST_PLACES = 60;

/** What a channel of short text messages sends: whole sentences from the first on, as many as one message holds. */
export function shortForm({ text, short }: Pick<Outgoing, 'text' | 'short'>): string {
  if (short !== undefined && fitsSms(short)) return short;
  const [first = '', ...others] = sentencesOf(text);
  let kept = fitsSms(first) ? first : cut(first);
  for (const sentence of fitsSms(first) ? others : []) {
    if (!fitsSms(`${kept} ${sentence}`)) break;
    kept = `${kept} ${sentence}`;
  }
  return kept;
}

const ITEM = /^(?:- |\d+:? )/u;

/** The sentences of all lines in order; what stands above a list goes with its first line. */
function sentencesOf(text: string): readonly string[] {
  const lines = text.split('\n').filter((line) => line.trim() !== '');
  let above = '';
  return lines.flatMap((line, at): readonly string[] => {
    if (!ITEM.test(line) && ITEM.test(lines[at + 1] ?? '') && !/[.!?]$/u.test(line)) {
      above = line.endsWith(':') ? line : `${line}:`;
      return [];
    }
    const words = line.replace(/^- /u, '');
    const [first = '', ...others] = (/[.!?:"]$/u.test(words) ? words : `${words}.`).split(SENTENCE_ENDS);
    const whole = `${above} ${first}`.trim();
    above = '';
    return [fitsSms(whole) ? whole : first, ...others];
  });
}

/** One sentence that is too long by itself ends where a clause does, or else a word. */
function cut(sentence: string): string {
  const room = sentence.slice(0, SMS_PLACES - CUT.length - (smsPlaces(sentence) - sentence.length));
  const clause = Math.max(room.lastIndexOf(', '), room.lastIndexOf('; '), room.lastIndexOf(': '), room.lastIndexOf(' ('));
  return `${room.slice(0, clause >= LEAST_PLACES ? clause : room.lastIndexOf(' '))}${CUT}`;
}
