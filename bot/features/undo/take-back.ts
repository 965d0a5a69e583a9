import type { Item } from '../../language/intent.js';
import type { Records, Told } from '../../ports.js';
import { deedWords } from '../../text/deed-text.js';
import { plainName } from '../../text/describe-text.js';
import { outcomeTakenBack } from '../../text/outcome-text.js';
import { houseStays, takenBack } from '../../text/undo-text.js';
import type { Deed } from '../evening/deeds-tonight.js';

interface Last extends Told {
  readonly receivedAtS: number;
  readonly text: string;
  readonly words: string;
  /** The house was changed with it. */
  readonly counted?: boolean;
}

const MOST = 20;
/** Older words are taken back by saying what is so. */
const REACH_S = 2 * 86_400;

/** Takes back what the newest message told, or the one with these words, but for its readings; null where a reading is newer, or nothing was told. */
export async function takeBackTold({ greenhouseId, receivedAtS, told: words }: { readonly greenhouseId: string; readonly receivedAtS: number; readonly told: string | null }, store: Records, cropWords: (id: string) => string): Promise<{ readonly text: string; readonly hasReadings: boolean } | null> {
  const told = (await toldLately(greenhouseId, receivedAtS - REACH_S, { store, cropWords })).filter(({ text }) => words === null || text === words);
  const newestS = Math.max(...told.map((one) => one.receivedAtS));
  const [reading] = await store.readings(greenhouseId, 1);
  if (told.length === 0 || (reading !== undefined && reading.receivedAtS > newestS)) return null;
  const first = told.find((one) => one.receivedAtS === newestS)!;
  const all = told.filter((one) => one.receivedAtS === newestS && one.text === first.text);
  for (const one of all) await store.withdrawTold(one, receivedAtS);
  const text = takenBack(all.map(({ words }) => words));
  return { text: all.some(({ counted }) => counted) ? `${text} ${houseStays}` : text, hasReadings: reading?.receivedAtS === newestS && reading.text === first.text };
}

async function toldLately(greenhouseId: string, sinceS: number, { store, cropWords }: { readonly store: Records; readonly cropWords: (id: string) => string }): Promise<readonly Last[]> {
  const [actions, outcomes, marks] = [await store.actions(greenhouseId, sinceS), await store.outcomes(greenhouseId, MOST), await store.marks(greenhouseId, MOST)];
  return [
    ...actions.map(({ id, receivedAtS, text, body, done }): Last => ({ of: 'action', id, receivedAtS, text, words: `${done ? 'done' : 'not done'}: ${(JSON.parse(body) as Deed).items.map((item: Item) => deedWords(item)).join(', ')}` })),
    ...outcomes.map(({ id, receivedAtS, text, ...row }): Last => ({ of: 'outcome', id, receivedAtS, text, words: outcomeTakenBack({ ...row, crop: cropWords(row.crop) }) })),
    ...marks.map(({ id, receivedAtS, text, counted }): Last => ({ of: 'mark', id, receivedAtS, text, words: `"${plainName(text)}"`, counted })),
  ].filter((one) => one.receivedAtS >= sinceS);
}
