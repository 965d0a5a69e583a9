import { DateTime } from 'luxon';
import { understand } from '../../../bot/language/understand.js';
import type { Intent } from '../../../bot/language/intent.js';
import { CROP_WORDS } from '../../../bot/conversation.js';
import { CROPS } from './crop-words.js';

export interface Phrase {
  readonly says: string;
  /** Fahrenheit unless said. */
  readonly units?: 'C' | 'F';
  /** 'morning' (07:10, as when nothing is said), 'evening' (17:30), or a local time of Thursday 15 January 2026. */
  readonly when?: string;
  /** An IANA name; New York unless said. Where it is said the crops are those of the real table. */
  readonly zone?: string;
  /** What the intent must at least hold. */
  readonly is: Readonly<Record<string, unknown>>;
}

export const ZONE = 'America/New_York';
const TIMES: Readonly<Record<string, string>> = { morning: '2026-01-15T07:10', evening: '2026-01-15T17:30' };

export const instantS = (when: string, zone: string = ZONE): number => DateTime.fromISO(TIMES[when] ?? (when.includes('T') ? when : `2026-01-15T${when}`), { zone }).toSeconds();

export const heard = (phrase: Phrase): Intent =>
  understand({ text: phrase.says, atS: instantS(phrase.when ?? 'morning', phrase.zone), zone: phrase.zone ?? ZONE, units: phrase.units ?? 'F', crops: phrase.zone === undefined ? CROPS : CROP_WORDS, thermometers: ['north end', 'bench 2'] });
