import Database from 'better-sqlite3';
import { existsSync, readFileSync } from 'node:fs';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { placeKeyOf } from '../../../bot/greenhouse-place.js';
import type { Memory } from '../../../bot/journal.js';
import { openSqliteStore } from '../../../bot/store/sqlite-store.js';
import { placeKey, secondPlaceKey } from '../../../bot/weather/place-key.js';
import { EVENING_S, inbound, job, newChat, outbound, send } from '../../contract/journal/rows.js';
import { DOUBLE_WITH_HEAT } from '../../fixtures/greenhouse-files.js';
import { storeFolder, type StoreFolder } from './store-folder.js';

// Words that stand nowhere else in the file.
const SECRET = 'quokka-in-the-lettuce';
const PLACE = { latitude: 45.123, longitude: -72.456, elevationM: 180 };

let at: StoreFolder;
let memory: Memory;
beforeEach(async () => {
  at = storeFolder();
  memory = await openSqliteStore({ path: at.path, placeKeyOf });
});
afterEach(async () => {
  await memory.close();
  at.remove();
});

const body = (place: typeof PLACE): string => JSON.stringify({ ...DOUBLE_WITH_HEAT, name: SECRET, place: { latitude: place.latitude, longitude: place.longitude, elevation: place.elevationM } });
/** Does any file of the store hold these words, in a table, a free page or the log? */
const holds = (words: string): boolean =>
  [at.path, `${at.path}-wal`].some((path) => existsSync(path) && readFileSync(path).includes(words));

async function furnish(): Promise<string> {
  await memory.saveGreenhouse({ id: 'hill', body: body(PLACE), savedAtS: EVENING_S });
  const chatId = await newChat(memory, `chat-${SECRET}`);
  await memory.updateChat(chatId, { greenhouseId: 'hill', dialogue: SECRET });
  await memory.addReading({ greenhouseId: 'hill', receivedAtS: EVENING_S, validAtS: EVENING_S, place: 'inside', statistic: 'low', tempC: -3, text: SECRET });
  await memory.addAction({ greenhouseId: 'hill', receivedAtS: EVENING_S, night: '2026-01-14', body: SECRET, done: true, text: SECRET });
  await memory.addOutcome({ greenhouseId: 'hill', receivedAtS: EVENING_S, night: '2026-01-14', crop: 'kale', bed: SECRET, state: 'fine', text: SECRET });
  await memory.addMark({ greenhouseId: 'hill', receivedAtS: EVENING_S, changedAtS: EVENING_S, body: SECRET, counted: false, text: SECRET });
  await memory.saveLearning({ greenhouseId: 'hill', learnedAtS: EVENING_S, body: SECRET.repeat(1000) });
  await memory.addAdvisory({ greenhouseId: 'hill', night: '2026-01-14', issuedAtS: EVENING_S, body: SECRET.repeat(1000) });
  await memory.addJob(job(`advisory:${SECRET}`, { greenhouseId: 'hill', body: SECRET }));
  await memory.addOutbound(outbound(chatId, `night:${SECRET}`, { message: { text: SECRET.repeat(1000), documents: [{ name: 'readings.csv', text: SECRET.repeat(1000) }] } }));
  await send(memory, `night:${SECRET}`, SECRET);
  for (const update of ['1', '2']) await memory.keepInbound(inbound(update, { chat: `chat-${SECRET}`, sender: SECRET, content: { kind: 'text', text: SECRET, forwarded: false } }));
  const [first] = await memory.openInbound(1);
  await memory.failInbound(first!.id, `cannot read ${SECRET}`);
  await memory.finishInbound(first!.id, 'parked', EVENING_S);
  const [second] = await memory.openInbound(1);
  await memory.finishInbound(second!.id, 'done', EVENING_S);
  return chatId;
}

describe('what was erased', () => {
  it('is nowhere in the files any more', async () => {
    await furnish();
    expect(holds(SECRET)).toBe(true);
    await memory.eraseGreenhouse('hill');
    expect(holds(SECRET)).toBe(false);
  });

  it('in an atomic work with its last word is nowhere either, once the update is done', async () => {
    await furnish();
    await memory.keepInbound(inbound('3', { chat: `chat-${SECRET}`, sender: SECRET }));
    const [row] = await memory.openInbound(1);
    await memory.atomically(async (within) => {
      await within.eraseGreenhouse('hill');
      await within.finishInbound(row!.id, 'done', EVENING_S);
    });
    expect(holds(SECRET)).toBe(false);
  });

  it('leaves no table with the greenhouse or the chat in it', async () => {
    const chatId = await furnish();
    await memory.eraseGreenhouse('hill');
    const raw = new Database(at.path, { readonly: true });
    const tables = raw.prepare<[], { name: string }>(`select name from sqlite_schema where type = 'table' and name not like 'sqlite_%'`).all();
    const found = tables.filter(({ name }) => JSON.stringify(raw.prepare(`select * from "${name}"`).all()).match(new RegExp(`"hill"|${chatId}`, 'u')));
    expect(tables.length).toBeGreaterThan(10);
    expect(found).toEqual([]);
    raw.close();
  });

  it('leaves the two updates known, and nothing of them', async () => {
    await furnish();
    await memory.eraseGreenhouse('hill');
    expect(await memory.keepInbound(inbound('1'))).toBe(false);
    expect(await memory.keepInbound(inbound('2'))).toBe(false);
  });

  it('includes the weather of the place in the greenhouse file, as it is really kept', async () => {
    await furnish();
    const keys = [placeKey(PLACE), secondPlaceKey(PLACE), `met-norway copy ${placeKey(PLACE)}`];
    const neighbours = placeKey({ ...PLACE, latitude: 45.124 });
    for (const key of [...keys, neighbours]) await memory.saveWeather({ placeKey: key, issuedAtS: EVENING_S, body: '{}' });
    await memory.saveGreenhouse({ id: 'odd', body: 'not a greenhouse file', savedAtS: EVENING_S });
    await memory.saveGreenhouse({ id: 'vale', body: body(PLACE), savedAtS: EVENING_S });
    await memory.eraseGreenhouse('hill');
    expect(await Promise.all(keys.map((key) => memory.lastWeather(key)))).not.toContain(null);
    await memory.eraseGreenhouse('vale');
    expect(await Promise.all(keys.map((key) => memory.lastWeather(key)))).toEqual([null, null, null]);
    expect(await memory.lastWeather(neighbours)).not.toBeNull();
  });
});

describe('what was purged', () => {
  it('is nowhere in the files any more', async () => {
    const chatId = await newChat(memory);
    await memory.addOutbound(outbound(chatId, 'night:1', { message: { text: SECRET.repeat(1000) } }));
    await send(memory, 'night:1', '1');
    await memory.addJob(job('a', { body: SECRET }));
    await memory.finishJob((await memory.dueJobs(EVENING_S, 1))[0]!.id, 'done', EVENING_S);
    await memory.keepInbound(inbound('1', { content: { kind: 'text', text: SECRET, forwarded: false } }));
    await memory.finishInbound((await memory.openInbound(1))[0]!.id, 'parked', EVENING_S);
    await memory.purge(EVENING_S);
    expect(holds(SECRET)).toBe(true);
    await memory.purge(EVENING_S + 1);
    expect(holds(SECRET)).toBe(false);
  });
});
