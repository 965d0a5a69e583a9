import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { GreenhouseFile } from '../../../engine/index.js';
import { QUILLONBY } from './neighbours.js';
import { startTown, type Town } from './town.js';

const START_S = Date.parse('2026-11-25T15:00:00Z') / 1000;
const DAY_H = 24;
const [GROWER, NEWCOMER] = [QUILLONBY.chat, 820_003] as const;
const READING = QUILLONBY.says.reading;

let town: Town;
beforeEach(async () => {
  town = await startTown(START_S, [QUILLONBY], [NEWCOMER]);
});
afterEach(async () => {
  const errors = town.errors;
  await town.close();
  expect(errors).toEqual([]);
});

const says = (text: string): Promise<string> => town.says(GROWER, text);
const lows = async (): Promise<readonly number[]> => (await town.memory.readings(QUILLONBY.id, 10)).map(({ tempC }) => tempC);
const house = async (): Promise<GreenhouseFile> => JSON.parse((await town.memory.greenhouse(QUILLONBY.id))!.body) as GreenhouseFile;
/** How many messages come unasked in a day. */
async function unasked(): Promise<number> {
  const before = town.api.sentTo(GROWER).length;
  await town.passes(DAY_H);
  return town.api.sentTo(GROWER).length - before;
}

describe('quiet is asked for', () => {
  it.each(['stop', '/stop', 'please stop texting me', 'leave me alone', 'unsubscribe'])('by "%s", and ends', async (text) => {
    expect(await says(text)).toMatch(/^Quiet from now on/u);
    expect(await unasked()).toBe(0);
    expect(await says('turn the messages back on')).toMatch(/comes again/u);
    expect(await unasked()).toBeGreaterThan(0);
  });

  it.each([`${READING}, stop texting me`, '-7.3C, unsubscribe', 'low was -7.3C. please stop'])('beside a reading that is kept: "%s"', async (text) => {
    const answer = await says(text);
    expect(answer).toMatch(/Noted: -7.3C/u);
    expect(answer).toMatch(/Quiet from now on/u);
    expect(await lows()).toEqual([-7.3]);
    expect(await unasked()).toBe(0);
  });

  it('in the middle of a question about the house, which waits', async () => {
    expect(await says('added 3 drums')).toMatch(/How much water/u);
    expect(await says('please stop texting me')).toMatch(/Quiet from now on/u);
    await says('55 gallons');
    expect((await house()).drums).toHaveLength(1);
  });
});

describe('who is asked whether all is to be erased', () => {
  beforeEach(() => says('please delete all my data'));

  it.each(['no', 'keep it', 'yes', 'ok thanks'])('keeps it with "%s"', async (text) => {
    expect(await says(text)).toBe('Nothing was erased.');
    expect(await says('erase everything')).toMatch(/Say "erase everything"/u);
  });

  it('and tells something else instead is heard', async () => {
    const answer = await says(READING);
    expect(answer).toMatch(/^Nothing was erased\.\nNoted: -7.3C/u);
    expect(await lows()).toEqual([-7.3]);
    expect(await says('no')).toMatch(/Taken back/u);
  });

  it('and asks for tonight gets it', async () => {
    expect(await says('tonight')).toMatch(/^Nothing was erased\.\nTonight/u);
  });

  it('and asks to be erased again is asked again', async () => {
    expect(await says('erase')).toMatch(/^This forgets/u);
    expect(await says('erase everything')).toMatch(/forgotten/u);
    expect(await town.memory.greenhouse(QUILLONBY.id)).toBeNull();
  });

  it('and shares a place moves the house, and nothing else of it', async () => {
    const before = await house();
    await town.does({ do: 'shares-place', person: GROWER, latitude: 45.5, longitude: -72.5 });
    // The clock of the old place goes with it.
    const after = await house();
    expect(after).toMatchObject({ ...before, place: { latitude: 45.5, longitude: -72.5 } });
    expect(after.place).not.toHaveProperty('timeZone');
  });
});

it('a question about the house goes on after a no to erasing', async () => {
  await says('added 3 drums');
  await says('erase');
  await says('no');
  expect(await says('55 gallons')).toMatch(/^Changed/u);
});

it.each(['tonight', 'unsubscribe', READING])('whoever was asked for the place anew may say "%s"', async (text) => {
  await says('change 1');
  expect(await says(text)).toMatch(/^(?:Tonight|Quiet|Noted)/u);
  expect(await says(QUILLONBY.town.name)).toMatch(/Wexcombe/u);
});

it.each(['describe:layers:all:two layers', 'describe:size:shape:gothic', 'describe:place:all:later', 'nothing of ours'])('a button of long ago (%s) begins no other house', async (data) => {
  const before = await house();
  const person = { id: GROWER, is_bot: false, first_name: 'Grower' };
  const answer = await town.gets(GROWER, 'callback_query', { id: 'press', from: person, chat_instance: '1', data, message: { message_id: 1, date: town.nowS(), chat: { id: GROWER, type: 'private', first_name: 'Grower' }, text: '' } });
  expect(answer.map(({ text }) => text).join()).not.toMatch(/I am Duskward|Where is the greenhouse/u);
  expect((await house()).beds).toEqual(before.beds);
});

describe('a newcomer', () => {
  beforeEach(() => town.says(NEWCOMER, 'hello'));

  it.each(['tonight', '/tonight', '/crop', 'unsubscribe', 'wake up', 'export my data', 'help', 'why?'])('who says "%s" is told what the question is good for, and asked again: no town is looked for', async (text) => {
    const answer = await town.says(NEWCOMER, text);
    expect(answer).toMatch(/^The forecast and the sun are those of your place/u);
    expect(answer).toMatch(/Where is the greenhouse\?/u);
  });

  it.each(['Wexcombe', 'wexcombe', 'near Wexcombe'])('who says "%s" is there', async (text) => {
    expect(await town.says(NEWCOMER, text)).toMatch(/^Place: Wexcombe/u);
  });

  it('has nothing to share, and everything to erase', async () => {
    await town.says(NEWCOMER, QUILLONBY.town.name);
    expect(town.rows()).toContain('45.318');
    expect(await town.says(NEWCOMER, 'invite')).toMatch(/no greenhouse here to share/u);
    expect(await town.says(NEWCOMER, 'delete my data')).toMatch(/^This forgets/u);
    expect(await town.says(NEWCOMER, 'no')).toBe('Nothing was erased.');
    expect(await town.says(NEWCOMER, 'start')).toMatch(/How big is it/u);
    await town.says(NEWCOMER, 'erase');
    expect(await town.says(NEWCOMER, 'erase everything')).toMatch(/forgotten/u);
    expect(town.rows()).not.toContain('45.318');
  });
});
