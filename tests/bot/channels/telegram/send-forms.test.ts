import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Outgoing, SendResult } from '../../../../bot/chat.js';
import { chatOf, GROUP, GROWER, pngOf, startRig, type Rig } from './telegram-rig.js';

let rig: Rig;
beforeEach(async () => {
  rig = await startRig();
  rig.api.act({ do: 'says', person: GROWER, text: 'hello' });
  rig.api.act({ do: 'says', person: GROWER, chat: GROUP, text: '/start' });
});
afterEach(() => rig.close());

const send = (message: Outgoing, chat = GROWER): Promise<SendResult> => rig.channel.send(chatOf(chat), message);
const seen = (chat = GROWER): readonly string[] => rig.api.sentTo(chat).map(({ text }) => text);
const sentIds = (): readonly string[] => rig.api.sentTo(GROWER).map(({ id }) => String(id));
/** Three paragraphs of so many characters. */
const LONG = ['a', 'b', 'c'].map((letter) => letter.repeat(3000)).join('\n\n');
const BUTTONS = [[{ id: 'yes', label: 'Yes' }, { id: 'no', label: 'No' }], [{ id: 'later', label: 'Later' }]];
const UNDER = { inline_keyboard: [[{ text: 'Yes', callback_data: 'yes' }, { text: 'No', callback_data: 'no' }], [{ text: 'Later', callback_data: 'later' }]] };

describe('words', () => {
  it('go as they are, signs of markup included, with no preview of links', async () => {
    await send({ text: 'below <0C & "wet" https://open-meteo.com/' });
    expect(rig.api.sentTo(GROWER)[0]).toMatchObject({ text: 'below <0C & "wet" https://open-meteo.com/', isMarkedUp: false, previewOff: true, markup: null });
  });

  it('go with markup where there is some', async () => {
    await send({ text: 'Do: cover', html: '<b>Do</b>: cover' });
    expect(rig.api.sentTo(GROWER)[0]).toMatchObject({ text: 'Do: cover', isMarkedUp: true, previewOff: true });
  });

  it.each(['<b>Do: cover', 'below <0C', '<h1>Do</h1>'])('go plain when the service cannot read the markup %s, and it is logged', async (html) => {
    expect(await send({ text: 'Do: cover', html, buttons: BUTTONS })).toMatchObject({ kind: 'sent' });
    expect(rig.api.sentTo(GROWER)).toMatchObject([{ text: 'Do: cover', isMarkedUp: false, markup: UNDER }]);
    expect(rig.logged.join('')).toContain('sent plain');
    expect(rig.logged.join('')).not.toContain('cover');
  });

  it('that are empty are refused', async () => {
    expect(await send({ text: '' })).toEqual({ kind: 'refused', cause: 'Bad Request: message text is empty' });
  });
});

describe('a long text', () => {
  it('goes in parts, in order, with the buttons under the last', async () => {
    const result = await send({ text: LONG, buttons: BUTTONS });
    expect(seen()).toEqual(LONG.split('\n\n'));
    expect(rig.api.sentTo(GROWER).map(({ markup }) => markup)).toEqual([null, null, UNDER]);
    expect(result).toEqual({ kind: 'sent', message: sentIds()[2] });
  });

  it('keeps its markup in every part', async () => {
    await send({ text: LONG, html: `<i>${LONG}</i>` });
    expect(seen()).toEqual(LONG.split('\n\n'));
    expect(rig.api.sentTo(GROWER).every(({ isMarkedUp }) => isMarkedUp)).toBe(true);
    expect(rig.logged).toEqual([]);
  });

  it.each(['later', 'unknown'] as const)('of which the second part ended with "%s" goes on there when it is tried again', async (kind) => {
    await send({ text: 'before' });
    const fault = kind === 'later' ? ({ kind: 'answer', code: 500, description: 'Internal Server Error' } as const) : ({ kind: 'cut' } as const);
    rig.api.fail({ method: 'sendMessage', fault: { kind: 'slow', ms: 0 } });
    rig.api.fail({ method: 'sendMessage', fault });
    expect(await send({ text: LONG, buttons: BUTTONS })).toMatchObject({ kind });
    expect(seen()).toEqual(['before', 'a'.repeat(3000)]);
    const result = await send({ text: LONG, buttons: BUTTONS });
    expect(seen()).toEqual(['before', ...LONG.split('\n\n')]);
    expect(result).toEqual({ kind: 'sent', message: sentIds()[3] });
    // Once it is out, the same words are a new message.
    await send({ text: LONG, buttons: BUTTONS });
    expect(seen()).toEqual(['before', ...LONG.split('\n\n'), ...LONG.split('\n\n')]);
  });

  it('that was sent whole is sent whole again', async () => {
    await send({ text: LONG });
    await send({ text: LONG });
    expect(seen()).toEqual([...LONG.split('\n\n'), ...LONG.split('\n\n')]);
  });

  it('goes on where the chat went on', async () => {
    const to = -1_001_234_567_890;
    rig.api.fail({ method: 'sendMessage', fault: { kind: 'slow', ms: 0 } });
    rig.api.fail({ method: 'sendMessage', fault: { kind: 'answer', code: 400, description: 'Bad Request: group chat was upgraded to a supergroup chat', parameters: { migrate_to_chat_id: to } } });
    expect(await send({ text: LONG }, GROUP)).toEqual({ kind: 'moved', to: String(to) });
    rig.api.act({ do: 'upgrades', person: GROWER, chat: GROUP, to });
    expect(await send({ text: LONG }, to)).toMatchObject({ kind: 'sent' });
    expect(seen(GROUP)).toEqual(['a'.repeat(3000)]);
    expect(seen(to)).toEqual(['b'.repeat(3000), 'c'.repeat(3000)]);
  });
});

describe('a picture', () => {
  const picturePng = pngOf(1200, 675);

  it('carries words that fit under it, with buttons', async () => {
    const text = 'x'.repeat(1024);
    await send({ text, html: `<b>${text}</b>`, picturePng, buttons: BUTTONS });
    expect(rig.api.sentTo(GROWER)).toMatchObject([{ text, isMarkedUp: true, markup: UNDER }]);
    expect(Buffer.from(rig.api.sentTo(GROWER)[0]!.picture!).toString('base64')).toBe(picturePng);
  });

  it('goes before words that do not fit under it; the buttons stand under the words', async () => {
    const text = 'x'.repeat(1025);
    const result = await send({ text, picturePng, buttons: BUTTONS });
    expect(rig.api.sentTo(GROWER)).toMatchObject([{ text: '', markup: null }, { text, picture: null, markup: UNDER }]);
    expect(result).toEqual({ kind: 'sent', message: sentIds()[1] });
  });

  it('may go without words', async () => {
    expect(await send({ text: '', picturePng })).toMatchObject({ kind: 'sent' });
    expect(rig.api.sentTo(GROWER)).toMatchObject([{ text: '' }]);
  });

  it.each([
    ['no picture', Buffer.from('not a picture').toString('base64')],
    ['too large', pngOf(9000, 2000)],
    ['too oblong', pngOf(2100, 100)],
  ])('that the service does not take (%s) does not keep the words back', async (_name, bad) => {
    expect(await send({ text: 'Do: cover', html: '<b>Do</b>: cover', picturePng: bad, buttons: BUTTONS })).toMatchObject({ kind: 'sent' });
    expect(rig.api.sentTo(GROWER)).toMatchObject([{ text: 'Do: cover', picture: null, isMarkedUp: true, markup: UNDER }]);
    expect(rig.logged.join('')).toContain('refuses a picture');
  });

  it('with markup that cannot be read keeps its words, plain', async () => {
    await send({ text: 'Do: cover', html: '<b>Do: cover', picturePng });
    expect(rig.api.sentTo(GROWER)).toMatchObject([{ text: 'Do: cover', isMarkedUp: false }]);
    expect(rig.api.sentTo(GROWER)[0]!.picture).not.toBeNull();
  });

  it('is not sent twice when the words after it have to wait', async () => {
    const message = { text: 'x'.repeat(1025), picturePng };
    rig.api.fail({ method: 'sendMessage', fault: { kind: 'answer', code: 500, description: 'Internal Server Error' } });
    expect(await send(message)).toMatchObject({ kind: 'later' });
    expect(await send(message)).toMatchObject({ kind: 'sent' });
    expect(rig.api.sentTo(GROWER).map(({ picture }) => picture !== null)).toEqual([true, false]);
  });

  it('to somebody who blocked us is gone like words', async () => {
    rig.api.act({ do: 'blocks', person: GROWER });
    expect(await send({ text: 'x', picturePng })).toMatchObject({ kind: 'gone' });
    expect(rig.api.calls.map(({ method }) => method)).toEqual(['sendPhoto']);
  });
});

describe('documents', () => {
  const readings = { name: 'readings.csv', text: 'place,"lowest, C"\r\n"Tunnel Süd",-3.5\r\n' };
  const deeds = { name: 'deeds.csv', text: 'night\r\n' };
  const files = (): readonly unknown[] => rig.api.sentTo(GROWER).map(({ document }) => (document === null ? null : { name: document.name, text: Buffer.from(document.bytes).toString() }));

  it('go before the words, each under its own name and to the letter; the buttons stand under the words', async () => {
    const result = await send({ text: 'All that I keep', documents: [readings, deeds], buttons: BUTTONS });
    expect(files()).toEqual([readings, deeds, null]);
    expect(rig.api.sentTo(GROWER)).toMatchObject([{ text: '', markup: null }, { text: '', markup: null }, { text: 'All that I keep', markup: UNDER }]);
    expect(result).toEqual({ kind: 'sent', message: sentIds()[2] });
  });

  it('go with a picture and long words, in order', async () => {
    await send({ text: 'x'.repeat(1025), documents: [deeds], picturePng: pngOf(1200, 675) });
    expect(rig.api.calls.map(({ method }) => method)).toEqual(['sendDocument', 'sendPhoto', 'sendMessage']);
  });

  it('that are out are not sent again when the next one has to wait', async () => {
    const message = { text: 'All that I keep', documents: [readings, deeds] };
    rig.api.fail({ method: 'sendDocument', fault: { kind: 'slow', ms: 0 } });
    rig.api.fail({ method: 'sendDocument', fault: { kind: 'answer', code: 500, description: 'Internal Server Error' } });
    expect(await send(message)).toMatchObject({ kind: 'later' });
    expect(await send(message)).toMatchObject({ kind: 'sent' });
    expect(files()).toEqual([readings, deeds, null]);
  });

  it('that the service does not take keep nothing else back', async () => {
    const result = await send({ text: 'All that I keep', documents: [{ name: 'empty.csv', text: '' }, deeds] });
    expect(files()).toEqual([deeds, null]);
    expect(result).toEqual({ kind: 'sent', message: sentIds()[1] });
    expect(rig.logged.join('')).toContain('refuses a document');
  });

  it('to a topic of a group go there, and to the group where the topic is gone', async () => {
    await send({ text: 'here', documents: [deeds], topic: '9' }, GROUP);
    expect(rig.api.calls.map(({ method, fields }) => [method, fields['message_thread_id'] !== undefined])).toEqual([['sendDocument', true], ['sendDocument', false], ['sendMessage', true], ['sendMessage', false]]);
    expect(rig.api.sentTo(GROUP)).toMatchObject([{ document: { name: 'deeds.csv' }, topic: null }, { text: 'here', topic: null }]);
  });
});

describe('the button for the place', () => {
  const KEYBOARD = { keyboard: [[{ text: 'My place', request_location: true }]], resize_keyboard: true, one_time_keyboard: true };
  const markups = (chat = GROWER): readonly unknown[] => rig.api.sentTo(chat).map(({ markup }) => markup);

  it('is shown in a private chat, and taken away with the next message', async () => {
    await send({ text: 'Where is it?', asksForLocation: true });
    await send({ text: 'Thank you' });
    await send({ text: 'Good night' });
    expect(markups()).toEqual([KEYBOARD, { remove_keyboard: true }, null]);
  });

  it('is left out in a group, where the service refuses it', async () => {
    expect(await send({ text: 'Where is it?', asksForLocation: true }, GROUP)).toMatchObject({ kind: 'sent' });
    expect(markups(GROUP)).toEqual([null]);
  });

  it('gives way to buttons', async () => {
    await send({ text: 'Where is it?', asksForLocation: true, buttons: BUTTONS });
    expect(markups()).toEqual([UNDER]);
  });
});

it('a button whose id is too long makes the message one that can never be sent', async () => {
  expect(await send({ text: 'x', buttons: [[{ id: 'i'.repeat(65), label: 'Yes' }]] })).toMatchObject({ kind: 'refused' });
});
