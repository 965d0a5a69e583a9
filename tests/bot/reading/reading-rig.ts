import type { Content, Outgoing } from '../../../bot/chat.js';
import type { AdvisoryPlace, AdvisoryReason } from '../../../bot/features/evening/advisory.js';
import { handleOpen } from '../../../bot/post/handle-inbound.js';
import { openSqliteStore } from '../../../bot/store/sqlite-store.js';
import type { Memory } from '../../../bot/journal.js';
import type { StoredReading } from '../../../bot/ports.js';
import { checkGreenhouse, type GreenhouseFile } from '../../../engine/index.js';

const ZONE = 'America/Toronto';
const ADDRESS = { channel: 'telegram', chat: '7' } as const;
export const HOUSE: GreenhouseFile = {
  name: 'House',
  place: { latitude: 45.1, longitude: -72.2, timeZone: ZONE },
  size: { width: 4, length: 8, height: 2.4 },
  layers: [{ film: 'standard' }],
  beds: [{ name: 'north', area: 10, crops: ['lettuce'], cover: { kind: 'fabric', weight: 50 } }],
  grower: { units: 'F' },
};

/** What an advisory said of a place: its low, and the half of its 80 % range, degrees C. */
export type Said = Readonly<Record<string, { readonly lowC: number; readonly halfC?: number }>>;

export interface ReadingRig {
  readonly memory: Memory;
  /** One message at a local time, and what was answered. */
  says(text: string, at?: string): Promise<string>;
  presses(label: string): Promise<string>;
  /** What was answered last, whole. */
  answered(): readonly Outgoing[];
  /** An advisory without a plan goes out for the night of a date, at four in the afternoon unless told otherwise. */
  forecasts(night: string, said: Said, more?: { readonly at?: string; readonly reasons?: readonly AdvisoryReason[] }): Promise<void>;
  /** Readings that stand, oldest first. */
  rows(): Promise<readonly StoredReading[]>;
  close(): Promise<void>;
}

const placesOf = (said: Said, lowAt: string): readonly Omit<AdvisoryPlace, 'bed'>[] =>
  Object.entries(said).map(([place, { lowC, halfC = 2 }]) => ({ place: place as AdvisoryPlace['place'], lowAt, lowC: { mean: lowC, q10: lowC - halfC, q50: lowC, q90: lowC + halfC } }));

/** One grower whose messages go through the trays, on a clock that the test turns; nothing of the weather is worked out. */
export async function readingRig(file: GreenhouseFile = HOUSE): Promise<ReadingRig> {
  const checked = checkGreenhouse(file);
  if (!checked.ok) throw new Error(JSON.stringify(checked.faults));
  const memory = await openSqliteStore({ path: ':memory:' });
  let nowS = Date.parse('2026-01-14T08:00:00-05:00') / 1000;
  let update = 0;
  let last: readonly Outgoing[] = [];
  await memory.saveGreenhouse({ id: 'h', body: JSON.stringify(file), savedAtS: nowS });
  const { id } = await memory.openChat(ADDRESS, { isGroup: false, atS: nowS });
  await memory.updateChat(id, { greenhouseId: 'h' });
  const refuse = (): Promise<never> => Promise.reject(new Error('nothing is worked out here'));
  const failures: unknown[] = [];
  const ports = {
    memory,
    clock: { nowS: () => nowS },
    log: { info: () => undefined, warn: () => undefined, error: (_event: string, fields?: Record<string, unknown>) => void failures.push(fields?.['error']) },
    weather: { weatherAt: refuse },
    workOut: refuse,
    workOutWeek: refuse,
    describe: { next: () => Promise.resolve(null), change: () => Promise.resolve(null) },
    acknowledge: () => Promise.resolve(),
    count: () => undefined,
  };
  const comes = async (content: Content): Promise<string> => {
    update += 1;
    await memory.keepInbound({ ...ADDRESS, update: String(update), isGroup: false, sender: '7', receivedAtS: nowS, content });
    await handleOpen(ports);
    if (failures.length > 0) throw failures[0];
    const due = await memory.dueOutbound(nowS, 10);
    last = due.map(({ message }) => message);
    for (const row of due) {
      await memory.beginSend(row.id, nowS);
      await memory.endSend(row.id, { state: 'sent', sentAs: String(row.id) }, nowS);
    }
    return last.map(({ text }) => text).join('\n');
  };
  return {
    memory,
    answered: () => last,
    says: (text, at) => {
      nowS = at === undefined ? nowS + 60 : Date.parse(`${at}:00-05:00`) / 1000;
      return comes({ kind: 'text', text, forwarded: false });
    },
    presses: (label) => {
      nowS += 60;
      const button = last.flatMap(({ buttons = [] }) => buttons.flat()).find((one) => one.label === label);
      if (button === undefined) throw new Error(`expected a button "${label}", got: ${last.map(({ text }) => text).join('\n')}`);
      return comes({ kind: 'press', button: button.id, message: '1', token: 't' });
    },
    forecasts: async (night, said, { at = `${night}T16:00`, reasons = [] } = {}) => {
      const issuedAt = `${at}:00-05:00`;
      const body = { night, issuedAt, weather: { source: 'demo', issuedAt, stale: false }, places: placesOf(said, issuedAt), alternatives: [{ actions: [], places: placesOf(said, issuedAt) }], plan: { actions: [] }, reasons };
      await memory.addAdvisory({ greenhouseId: 'h', night, issuedAtS: Date.parse(issuedAt) / 1000, body: JSON.stringify(body) });
    },
    rows: async () => (await memory.readings('h', 100)).toReversed(),
    close: () => memory.close(),
  };
}
