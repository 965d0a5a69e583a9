import type { Meaning } from '../../language/intent.js';
import type { Records } from '../../ports.js';
import { localTime } from '../../text/local-time.js';
import { markCounted, markNoted } from '../../text/mark-text.js';

type Mark = Extract<Meaning, { kind: 'mark' }>;

export interface MarkMessage {
  readonly greenhouseId: string;
  readonly zone: string;
  readonly receivedAtS: number;
  /** The description of the house holds it already. */
  readonly counted: boolean;
}

/** Keeps a lasting change of the house with its day; what of it the model counts with stands in the description. */
export async function logMark({ text, items, amounts, at }: Mark, { greenhouseId, zone, receivedAtS, counted }: MarkMessage, store: Records): Promise<string> {
  const changedAtS = Math.floor(Date.parse(at) / 1000);
  const body = JSON.stringify({ ...(items === undefined ? {} : { items }), ...(amounts === undefined ? {} : { amounts }) });
  await store.addMark({ greenhouseId, receivedAtS, changedAtS, body, counted, text });
  const [date, today] = [localTime(zone).date(changedAtS), localTime(zone).date(receivedAtS)];
  return counted ? markCounted(date, today) : markNoted(text, date, today);
}
