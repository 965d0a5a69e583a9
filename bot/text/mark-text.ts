import { plainName } from './describe-text.js';
import { nightWords } from './reading-text.js';
import { UNDO } from './undo-text.js';

/** A change that the description of the house holds now. */
export const markCounted = (date: string, today: string): string => `I keep it as a change of the house from ${dayWords(date, today)} on. ${UNDO}`;

/** A change that is only noted: nothing of the house was understood that the model counts with. */
export const markNoted = (text: string, date: string, today: string): string =>
  `Noted for ${dayWords(date, today)}: "${plainName(text)}". It is a note: the numbers do not count it. To have a thing counted, say how much there is now, for example "10 drums of 55 gallons" or "two layers of film". ${UNDO}`;

const dayWords = (date: string, today: string): string => (date === today ? 'today' : nightWords(date, today));
