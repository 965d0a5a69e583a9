import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { HARROWMET, QUILLONBY, wordsOf } from './neighbours.js';
import { startTown, type Town } from './town.js';

const START_S = Date.parse('2026-11-25T15:00:00Z') / 1000;
const DAY_H = 24;
const OWNER = QUILLONBY.chat;
const [GUEST, STRANGER, GROUP] = [810_003, 810_014, -810_025] as const;
/** An address is no word about the house. */
const OF_THE_HOUSE = { ...QUILLONBY, telling: [...QUILLONBY.telling.filter((word) => word !== String(OWNER)), QUILLONBY.id] };
const ERASED = /has erased it/u;

let town: Town;
beforeEach(async () => {
  town = await startTown(START_S, [QUILLONBY, HARROWMET], [GUEST, STRANGER, GROUP]);
});
afterEach(async () => {
  const errors = town.errors;
  await town.close();
  expect(errors).toEqual([]);
});

const invitation = async (): Promise<string> => /"join (\w{8})"/u.exec(await town.says(OWNER, 'invite'))![1]!;
const heardSince = (chat: number, before = 0): string => town.api.sentTo(chat).slice(before).map(({ text }) => text).join('\n');
const inGroup = (text: string): Promise<readonly { readonly text: string }[]> => town.does({ do: 'says', person: STRANGER, chat: GROUP, text });

async function shared(): Promise<string> {
  const code = await invitation();
  expect(await town.says(GUEST, `join ${code}`)).toContain(QUILLONBY.greenhouse.name);
  return code;
}

describe('a house that is shared by invitation', () => {
  it('is told to the second person, asked and unasked, and to no third', async () => {
    expect(wordsOf(OF_THE_HOUSE, await town.says(GUEST, 'tonight'))).toEqual([]);
    const code = await shared();
    expect(await town.says(GUEST, 'tonight')).toContain(QUILLONBY.greenhouse.name);
    await town.says(OWNER, QUILLONBY.says.reading);
    expect(await town.says(GUEST, 'undo that reading')).toContain('7.3');
    const before = town.api.sentTo(GUEST).length;
    await town.passes(DAY_H);
    for (const chat of [OWNER, GUEST]) expect(heardSince(chat, chat === GUEST ? before : 0)).toMatch(/Tonight, .*Quillonby/u);
    // A code lets one in.
    for (const text of [`join ${code}`, `/join ${code}`, `start ${code}`, 'tonight', 'invite', 'erase everything', 'erase everything']) await town.says(STRANGER, text);
    await town.passes(DAY_H);
    expect(town.api.sentTo(STRANGER).length).toBeGreaterThan(0);
    for (const chat of [STRANGER, HARROWMET.chat]) expect(wordsOf(OF_THE_HOUSE, heardSince(chat))).toEqual([]);
  });

  it.each([['who was invited', GUEST, OWNER], ['who invited', OWNER, GUEST]] as const)('leaves nothing when the one %s erases it; the other is told so at the next word, and only once', async (_who, eraser, other) => {
    await shared();
    for (const chat of [OWNER, GUEST]) for (const text of [QUILLONBY.says.reading, QUILLONBY.says.did, 'tonight', 'added 3 drums']) await town.says(chat, text);
    await town.passes(DAY_H);
    await invitation();
    expect(wordsOf(OF_THE_HOUSE, town.rows()).length).toBeGreaterThan(0);
    await town.says(eraser, 'erase everything');
    expect(await town.says(eraser, 'erase everything')).toMatch(/forgotten/u);
    expect(wordsOf(OF_THE_HOUSE, town.rows())).toEqual([]);
    const before = { calls: town.api.calls.length, sent: town.api.sentTo(other).length };
    await town.passes(2 * DAY_H);
    expect(heardSince(other, before.sent)).toBe('');
    expect(await town.says(other, '-4.2C')).toMatch(ERASED);
    expect(await town.says(other, 'start')).toMatch(/^I am Duskward/u);
    expect(await town.says(eraser, 'start')).not.toMatch(ERASED);
    for (const text of ['tonight', 'undo', 'why?', 'invite']) for (const chat of [other, eraser]) await town.says(chat, text);
    for (const { fields } of town.api.calls.slice(before.calls)) if (Number(fields['chat_id']) !== HARROWMET.chat) expect(wordsOf(OF_THE_HOUSE, JSON.stringify(fields))).toEqual([]);
    expect(wordsOf(HARROWMET, town.rows())).toContain(HARROWMET.greenhouse.name);
  });

  it('can be joined again after it was erased only where another one invites', async () => {
    const code = await invitation();
    await town.says(OWNER, 'erase everything');
    await town.says(OWNER, 'erase everything');
    expect(await town.says(GUEST, `join ${code}`)).toMatch(/not known/u);
    const other = /"join (\w{8})"/u.exec(await town.says(HARROWMET.chat, 'invite'))![1]!;
    expect(await town.says(OWNER, `join ${other}`)).toContain(HARROWMET.greenhouse.name);
  });

  it('is not erased by one of a group, and says where it can be', async () => {
    const [joined] = await inGroup(`/join ${await invitation()}`);
    expect(joined!.text).toContain(QUILLONBY.greenhouse.name);
    for (const text of ['/erase', '/erase everything', '/erase everything']) expect((await inGroup(text)).map((message) => message.text).join()).toMatch(/In a group I erase nothing/u);
    expect(await town.says(OWNER, 'tonight')).toContain(QUILLONBY.greenhouse.name);
  });

  it('takes the place of a house that nobody else has: that one has no more evenings', async () => {
    const code = await invitation();
    await town.says(HARROWMET.chat, `join ${code}`);
    const before = town.api.sentTo(HARROWMET.chat).length;
    await town.passes(2 * DAY_H);
    expect(heardSince(HARROWMET.chat, before)).toContain(QUILLONBY.greenhouse.name);
    expect((await town.memory.dueJobs(Number.MAX_SAFE_INTEGER, 100)).map(({ greenhouseId }) => greenhouseId)).not.toContain(HARROWMET.id);
  });
});

describe('an answer that takes long', () => {
  it('writes nothing of a house that another one erased meanwhile', async () => {
    await shared();
    const evening = town.holdEvenings();
    const answer = town.says(OWNER, 'tonight');
    await evening.asked;
    town.api.act({ do: 'says', person: GUEST, text: 'erase everything' });
    town.api.act({ do: 'says', person: GUEST, text: 'erase everything' });
    await town.until(async () => (await town.memory.greenhouse(QUILLONBY.id)) === null);
    evening.let();
    expect(await answer).toMatch(ERASED);
    expect(wordsOf(OF_THE_HOUSE, town.rows())).toEqual([]);
  });
});
