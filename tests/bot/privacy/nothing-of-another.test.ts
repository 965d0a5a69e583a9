import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CROP_WORDS } from '../../../bot/conversation.js';
import { meanings, type IntentKind } from '../../../bot/language/intent.js';
import { understand } from '../../../bot/language/understand.js';
import { COMMAND_WORDS } from '../../../bot/text/command-words.js';
import { HARROWMET, QUILLONBY, wordsOf, type Neighbour } from './neighbours.js';
import { startTown, type Town } from './town.js';

const START_S = Date.parse('2026-11-25T09:00:00Z') / 1000;
const PAIRS = [[QUILLONBY, HARROWMET], [HARROWMET, QUILLONBY]] as const;
const NAMED = PAIRS.map(([one, other]) => [one.greenhouse.name, one, other] as const);
const NEVER_SHOWN = ['12.4', '13.6'];
/** So far from the forecast that it is asked about, with buttons. */
const DOUBTFUL = 'low was 16C inside';
const KINDS = Object.keys(QUILLONBY.says) as readonly IntentKind[];

let town: Town;
/** What each has said, in order. */
const said = new Map<Neighbour, string[]>([[QUILLONBY, []], [HARROWMET, []]]);

async function both(what: (one: Neighbour, other: Neighbour) => Promise<unknown>): Promise<void> {
  for (const [one, other] of PAIRS) await what(one, other);
}

async function says(one: Neighbour, text: string): Promise<string> {
  said.get(one)!.push(text);
  return town.says(one.chat, text);
}

/** Ids of the buttons under all that a chat was sent, each once, with the message that it last stood under. */
const buttonsUnder = (chat: number): ReadonlyMap<string, number> =>
  new Map(town.api.sentTo(chat).flatMap(({ id: under, markup }) => ((markup as { inline_keyboard?: { callback_data: string }[][] } | null)?.inline_keyboard ?? []).flat().map(({ callback_data: id }) => [id, under] as const)));

const of = ({ chat }: Neighbour): object => ({ from: { id: chat, is_bot: false, first_name: 'Grower' }, chat: { id: chat, type: 'private', first_name: 'Grower' }, date: town.nowS() });
let presses = 0;

/** All that is kept of a house. */
const keptOf = async ({ id }: Neighbour): Promise<unknown> => JSON.parse(JSON.stringify([await town.memory.greenhouse(id), await town.memory.readings(id, 100), await town.memory.actions(id, 0), await town.memory.lastAdvisory(id)]));
/** What was kept of the other before and after somebody used what was the other's. */
const pried: { readonly before: unknown; readonly after: unknown }[] = [];

async function prying(other: Neighbour, pry: () => Promise<void>): Promise<void> {
  const before = await keptOf(other);
  await pry();
  pried.push({ before, after: await keptOf(other) });
}

/** No button of another's can be seen, but a program may send any. */
async function pressesAny(one: Neighbour, button: string, under: number): Promise<void> {
  presses += 1;
  const { from, ...message } = { from: {}, ...of(one) };
  town.api.world.presses.add(`press ${presses}`);
  await town.gets(one.chat, 'callback_query', { id: `press ${presses}`, from, chat_instance: '1', data: button, message: { ...message, message_id: under, text: '' } });
}

/** An answer to any message by its number, in whatever chat that one stands. */
async function answersAny(one: Neighbour, message: number, text: string): Promise<void> {
  said.get(one)!.push(text);
  const bot = { id: town.api.bot.id, is_bot: true, first_name: 'Bot', username: town.api.bot.username };
  await town.gets(one.chat, 'message', { ...of(one), message_id: town.api.world.newMessageId(), text, reply_to_message: { ...of(one), from: bot, message_id: message, text: '' } });
}

beforeAll(async () => {
  town = await startTown(START_S, [QUILLONBY, HARROWMET]);
  await both((one) => says(one, one.says.reading));
  await town.passes(24);
  await both((one) => says(one, 'scrap that'));
  for (const kind of KINDS) {
    await both((one) => says(one, one.says[kind]));
    // Out of a question about the house again, so that the next one is heard as it is meant.
    if (kind === 'mark') await both((one) => says(one, 'skip'));
  }
  await town.passes(24);
  for (const { name } of COMMAND_WORDS) await both((one) => says(one, `/${name}`));
  await both((one) => says(one, '/start'));
  await both((one) => says(one, one.says.reading));
  await both((one) => says(one, DOUBTFUL));
  await both((one, other) =>
    prying(other, async () => {
      for (const [id, under] of buttonsUnder(other.chat)) await pressesAny(one, id, under);
      for (const { id } of town.api.sentTo(other.chat).slice(-20)) await answersAny(one, id, 'why?');
      await answersAny(one, town.api.sentTo(other.chat).at(-1)!.id, 'scrap that');
    }),
  );
  await both(async (one) => {
    for (const [id, under] of buttonsUnder(one.chat)) await pressesAny(one, id, under);
  });
  await both(async (one, other) => {
    await says(other, 'invite');
    for (const code of ['abcdefgh', '23456789', 'abc', '1']) await says(one, `join ${code}`);
    const [first] = town.api.world.messages.filter(({ chat, fromBot }) => chat === one.chat && !fromBot);
    await town.does({ do: 'edits', person: one.chat, message: first!.id, text: one.says.reading });
    await town.does({ do: 'sends-photo', person: one.chat, caption: one.says.fix });
    await town.does({ do: 'sends-photo', person: one.chat });
    await town.does({ do: 'sends', person: one.chat, what: 'sticker' });
    await says(one, 'undo');
    await says(one, 'what do you know about my greenhouse');
    await says(one, 'done');
    await says(one, `we moved to ${one.town.name}`);
    await says(one, 'tonight');
  });
  await town.passes(72);
  await both(async (one) => {
    await town.does({ do: 'shares-place', person: one.chat, latitude: one.greenhouse.place.latitude, longitude: one.greenhouse.place.longitude });
    await says(one, 'summary');
  });
});
afterAll(() => town.close());

describe('each of two growers', () => {
  it.each(KINDS)('says something that means "%s"', (kind) => {
    for (const [one] of PAIRS) {
      const { grower, thermometers } = one.greenhouse;
      const intent = understand({ text: one.says[kind], atS: START_S, zone: one.zone, units: grower.units, crops: CROP_WORDS, thermometers: thermometers.map(({ name }) => name) });
      expect(meanings(intent).map((meaning) => meaning.kind), one.says[kind]).toContain(kind);
    }
  });

  it('is answered each time, without a failure', () => {
    expect(town.errors).toEqual([]);
    for (const [one] of PAIRS) {
      const heard = town.api.sentTo(one.chat).map(({ text }) => text).join('\n');
      expect(heard).not.toMatch(/put it aside|went wrong|not work out/u);
      expect(town.api.sentTo(one.chat).length).toBeGreaterThan(said.get(one)!.length);
    }
  });

  it.each(NAMED)('is told of the own house: %s', (_name, one) => {
    const heard = town.api.sentTo(one.chat).map(({ text }) => text).join('\n');
    // Whoever is never told a word could not be told it by mistake either. Numbers are shown in whole degrees F.
    expect(one.telling.filter((word) => !wordsOf(one, heard).includes(word) && !NEVER_SHOWN.includes(word))).toEqual([String(one.chat)]);
  });

  it.each(NAMED)('is sent nothing of the other: %s', (_name, one, other) => {
    for (const { text, markup } of town.api.sentTo(one.chat)) expect(wordsOf(other, `${text}\n${JSON.stringify(markup)}`), text).toEqual([]);
  });

  it.each(NAMED)('is given files of the own house alone: %s', (_name, one, other) => {
    const files = town.api.sentTo(one.chat).flatMap(({ document }) => (document === null ? [] : [new TextDecoder().decode(document.bytes)]));
    expect(wordsOf(one, files.join('\n')).length).toBeGreaterThan(0);
    expect(wordsOf(other, files.join('\n'))).toEqual([]);
  });

  it('changes nothing of the other with the other\'s buttons and messages', () => {
    for (const { chat } of [QUILLONBY, HARROWMET]) expect([...buttonsUnder(chat).keys()].join()).toMatch(/did:.*reading:\d/u);
    expect(pried).toHaveLength(PAIRS.length);
    for (const { before, after } of pried) expect(after).toEqual(before);
  });

  it('is spoken of in no call to Telegram but for the own chat', () => {
    for (const { method, fields } of town.api.calls) {
      for (const [one, other] of PAIRS) if (fields['chat_id'] === undefined || Number(fields['chat_id']) === one.chat) expect(wordsOf(other, JSON.stringify(fields)), method).toEqual([]);
    }
  });
});
