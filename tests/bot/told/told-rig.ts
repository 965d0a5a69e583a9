import type { Button, Content, Outgoing } from '../../../bot/chat.js';
import type { Memory } from '../../../bot/journal.js';
import { NoWeatherError } from '../../../bot/ports.js';
import { describer } from '../../../bot/post/describe-reply.js';
import { handleOpen } from '../../../bot/post/handle-inbound.js';
import { openSqliteStore } from '../../../bot/store/sqlite-store.js';
import type { GreenhouseFile } from '../../../engine/index.js';

const ADDRESS = { channel: 'telegram', chat: '7' } as const;

/** Four drums, two beds of which one has a cover, in a zone five hours behind. */
export const HOUSE: GreenhouseFile = {
  name: 'House',
  place: { latitude: 45.1, longitude: -72.2, timeZone: 'America/Toronto' },
  size: { width: 4, length: 8, height: 2.4 },
  layers: [{ film: 'standard' }],
  beds: [{ name: 'the north bed', area: 10, crops: ['kale', 'lettuce'], cover: { kind: 'fabric', weight: 50 } }, { name: 'the south bed', area: 8, crops: ['leek'] }],
  drums: [{ litres: '55 gal', count: 4 }],
  grower: { units: 'C' },
};

export interface ToldRig {
  readonly memory: Memory;
  /** A message, a minute later or at a local time, and what was answered. */
  says(text: string, at?: string): Promise<string>;
  /** The last message again with other words, ten minutes later. */
  edits(text: string, at?: string): Promise<string>;
  /** Presses the button with this label under the last message that has it. */
  presses(label: string): Promise<string>;
  /** The greenhouse file as it is kept. */
  house(): Promise<GreenhouseFile>;
  close(): Promise<void>;
}

/** One grower with a house whose words go through the trays; nothing of the weather is worked out. */
export async function toldRig(start: string, file: GreenhouseFile = HOUSE): Promise<ToldRig> {
  const memory = await openSqliteStore({ path: ':memory:' });
  const secondsAt = (local: string): number => Date.parse(`${local}:00-05:00`) / 1000;
  let nowS = secondsAt(start);
  let update = 0;
  let message = 100;
  await memory.saveGreenhouse({ id: 'h', body: JSON.stringify(file), savedAtS: nowS });
  const { id } = await memory.openChat(ADDRESS, { isGroup: false, atS: nowS });
  await memory.updateChat(id, { greenhouseId: 'h' });
  const failures: unknown[] = [];
  const buttons: Button[] = [];
  const refuse = (): Promise<never> => Promise.reject(new NoWeatherError('none here'));
  const rooms = {
    memory,
    clock: { nowS: () => nowS },
    log: { info: () => undefined, warn: () => undefined, error: (_event: string, fields?: Record<string, unknown>) => void failures.push(fields?.['error']) },
    weather: { weatherAt: refuse },
    workOut: refuse,
    workOutWeek: refuse,
  };
  const ports = { ...rooms, describe: describer({ ...rooms, places: { placesCalled: () => Promise.resolve([]) } }), acknowledge: () => Promise.resolve(), count: () => undefined };
  const comes = async (content: Content): Promise<string> => {
    update += 1;
    await memory.keepInbound({ ...ADDRESS, update: String(update), isGroup: false, sender: '7', receivedAtS: nowS, content });
    await handleOpen(ports);
    if (failures.length > 0) throw failures[0];
    const said: Outgoing[] = [];
    for (let due = await memory.dueOutbound(nowS, 10); due.length > 0; due = await memory.dueOutbound(nowS, 10)) {
      for (const row of due) {
        said.push(row.message);
        await memory.beginSend(row.id, nowS);
        await memory.endSend(row.id, { state: 'sent', sentAs: String(row.id) }, nowS);
      }
    }
    buttons.push(...said.flatMap((one) => (one.buttons ?? []).flat()));
    return said.map(({ text }) => text).join('\n');
  };
  return {
    memory,
    says: (text, at) => {
      nowS = at === undefined ? nowS + 60 : secondsAt(at);
      message += 1;
      return comes({ kind: 'text', text, forwarded: false, message: String(message) });
    },
    edits: (text, at) => {
      nowS = at === undefined ? nowS + 600 : secondsAt(at);
      return comes({ kind: 'edited', text, message: String(message) });
    },
    presses: (label) => {
      nowS += 60;
      const button = buttons.findLast((one) => one.label === label);
      if (button === undefined) throw new Error(`no button ${JSON.stringify(label)} was sent`);
      return comes({ kind: 'press', button: button.id, message: '1', token: 't' });
    },
    house: async () => JSON.parse((await memory.greenhouse('h'))!.body) as GreenhouseFile,
    close: () => memory.close(),
  };
}

/** An advisory of a night with the chances of its crops, the plan, and what else could have been done. */
export const issued = (memory: Memory, night: string, said: { readonly crops?: Readonly<Record<string, number>>; readonly actions?: readonly object[]; readonly couldDo?: readonly object[] }): Promise<unknown> =>
  memory.addAdvisory({ greenhouseId: 'h', night, issuedAtS: Date.parse(`${night}T16:00:00-05:00`) / 1000, body: JSON.stringify({ night, issuedAt: `${night}T16:00:00-05:00`, places: [], alternatives: [[], said.couldDo ?? [], said.actions ?? []].map((actions) => ({ actions, crops: [], places: [], expectedLoss: 0 })), reasons: [], crops: Object.entries(said.crops ?? {}).map(([asked, damageProbability]) => ({ crop: asked, asked, bed: 'the north bed', damageProbability })), plan: { id: 'plan', actions: said.actions ?? [] } }) });
