import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { inboundOf } from '../../../../bot/channels/telegram/inbound.js';
import type { Content } from '../../../../bot/chat.js';
import type { Act } from '../../../fixtures/bot-api/people.js';
import { chatOf, GROUP, GROWER, startRig, until, type Rig } from './telegram-rig.js';

let rig: Rig;
beforeEach(async () => {
  rig = await startRig({ api: { privacy: false } });
  void rig.listen();
});
afterEach(() => rig.close());

/** Does it, then says something: what came in for it, in between. */
async function heardOf(...acts: readonly Act[]): Promise<readonly unknown[]> {
  acts.forEach((what) => rig.api.act(what));
  rig.api.act({ do: 'says', person: 1, text: 'that was all' });
  await until('the last message came', () => rig.taken.some(({ content }) => content.kind === 'text' && content.text === 'that was all'));
  return rig.taken.filter(({ sender }) => sender !== '1').map(({ content }) => (content.kind === 'text' ? withoutId(content) : content));
}

/** What was said, without the id by which it can be edited. */
function withoutId({ message, ...said }: Extract<Content, { kind: 'text' }>): unknown {
  expect(message).toMatch(/^\d+$/u);
  return said;
}

describe('in a private chat', () => {
  it('a text has the id that its edit names', async () => {
    const first = rig.api.act({ do: 'says', person: GROWER, text: '28F' }).message!;
    await heardOf({ do: 'edits', person: GROWER, message: first, text: '29F' });
    expect(rig.taken.map(({ content }) => content)).toEqual(expect.arrayContaining([
      { kind: 'text', text: '28F', forwarded: false, message: String(first) },
      { kind: 'edited', text: '29F', message: String(first) },
    ]));
  });

  it.each<[string, Act, unknown]>([
    ['text', { do: 'says', person: GROWER, text: '28F inside' }, { kind: 'text', text: '28F inside', forwarded: false }],
    ['a forwarded text', { do: 'says', person: GROWER, text: '/tonight 28F', forwarded: true }, { kind: 'text', text: '/tonight 28F', forwarded: true }],
    ['a command', { do: 'says', person: GROWER, text: '/tonight' }, { kind: 'text', text: 'tonight', forwarded: false }],
    ['a command with words after it', { do: 'says', person: GROWER, text: '/crop  kale on friday' }, { kind: 'text', text: 'crop  kale on friday', forwarded: false }],
    ['a command with our name', { do: 'says', person: GROWER, text: '/Done@duskwardtestbot covered the beds' }, { kind: 'text', text: 'Done covered the beds', forwarded: false }],
    ['a start with what the link carried', { do: 'says', person: GROWER, text: '/start A-b_9' }, { kind: 'text', text: 'start A-b_9', forwarded: false }],
    ['text with a slash that is no command', { do: 'says', person: GROWER, text: '/ 28F' }, { kind: 'text', text: '/ 28F', forwarded: false }],
    ['an edited text', { do: 'edits', person: GROWER, message: 77, text: '29F inside' }, { kind: 'edited', text: '29F inside', message: '77' }],
    ['a place', { do: 'shares-place', person: GROWER, latitude: 44.25, longitude: -72.5 }, { kind: 'location', latitude: 44.25, longitude: -72.5 }],
    ['a venue', { do: 'shares-place', person: GROWER, latitude: 44.25, longitude: -72.5, venue: 'Invented Farm' }, { kind: 'location', latitude: 44.25, longitude: -72.5 }],
    ['a photo', { do: 'sends-photo', person: GROWER }, { kind: 'photo', caption: null }],
    ['a photo with words', { do: 'sends-photo', person: GROWER, caption: '28F inside' }, { kind: 'photo', caption: '28F inside' }],
    ['a sticker', { do: 'sends', person: GROWER, what: 'sticker' }, { kind: 'other', what: 'sticker' }],
    ['a voice message', { do: 'sends', person: GROWER, what: 'voice' }, { kind: 'other', what: 'voice' }],
    ['a poll', { do: 'sends', person: GROWER, what: 'poll' }, { kind: 'other', what: 'poll' }],
    ['what nobody has thought of yet', { do: 'sends', person: GROWER, what: 'smell_of_soup' }, { kind: 'other', what: 'unknown' }],
    ['a block', { do: 'blocks', person: GROWER }, { kind: 'blocked' }],
    ['an unblock', { do: 'unblocks', person: GROWER }, { kind: 'unblocked' }],
  ])('%s', async (_name, what, content) => {
    expect(await heardOf(what)).toEqual([content]);
  });

  it.each(['pinned_message', 'message_auto_delete_timer_changed', 'chat_background_set'])('a notice of the service is not handed over: %s', async (what) => {
    expect(await heardOf({ do: 'sends', person: GROWER, what, body: {} })).toEqual([]);
  });

  it('an answer to a message of ours names it; one to a message of theirs does not', async () => {
    const theirs = rig.api.act({ do: 'says', person: GROWER, text: 'hello' }).message!;
    await rig.channel.send(chatOf(GROWER), { text: 'how cold is it?' });
    const ours = rig.api.sentTo(GROWER)[0]!.id;
    expect(await heardOf({ do: 'says', person: GROWER, text: '28F', answers: ours }, { do: 'says', person: GROWER, text: '29F', answers: theirs })).toEqual([
      { kind: 'text', text: 'hello', forwarded: false },
      { kind: 'text', text: '28F', forwarded: false, answers: String(ours) },
      { kind: 'text', text: '29F', forwarded: false },
    ]);
  });

  it('a press names the button, the message and what the service waits for; an acknowledgement ends the waiting', async () => {
    rig.api.act({ do: 'says', person: GROWER, text: 'hello' });
    await rig.channel.send(chatOf(GROWER), { text: 'covered?', buttons: [[{ id: 'yes', label: 'Yes' }]] });
    const ours = rig.api.sentTo(GROWER)[0]!.id;
    const [, press] = (await heardOf({ do: 'presses', person: GROWER, message: ours, button: 'yes' })) as { token: string }[];
    expect(press).toEqual({ kind: 'press', button: 'yes', message: String(ours), token: expect.stringMatching(/^\d+$/u) as string });
    await rig.channel.acknowledge(press!.token);
    expect(rig.api.world.acknowledged).toEqual([press!.token]);
    // A second time is too late; that is no matter.
    await expect(rig.channel.acknowledge(press!.token)).resolves.toBeUndefined();
  });

  it('has the person, the chat, the update and when it was written', async () => {
    const { update } = rig.api.act({ do: 'says', person: GROWER, text: 'hi' });
    await until('it came', () => rig.taken.length === 1);
    expect(rig.taken[0]).toMatchObject({ channel: 'telegram', chat: String(GROWER), sender: String(GROWER), isGroup: false, update: String(update) });
  });
});

describe('in a group', () => {
  const inGroup = (text: string): Act => ({ do: 'says', person: GROWER, chat: GROUP, text });

  it.each([
    ['/tonight', 'tonight'],
    ['/tonight@DuskwardTestBot', 'tonight'],
    ['@DuskwardTestBot any frost this week', 'any frost this week'],
    ['will the kale survive, @duskwardtestbot ?', 'will the kale survive, ?'],
  ])('%s is for us', async (said, text) => {
    expect(await heardOf(inGroup(said))).toEqual([{ kind: 'text', text, forwarded: false }]);
    expect(rig.taken[0]).toMatchObject({ isGroup: true, chat: String(GROUP), sender: String(GROWER) });
  });

  it('an answer to a message of ours is for us', async () => {
    rig.api.act(inGroup('/tonight'));
    await rig.channel.send(chatOf(GROUP), { text: 'how cold is it?' });
    const ours = rig.api.sentTo(GROUP)[0]!.id;
    expect((await heardOf({ do: 'says', person: GROWER, chat: GROUP, text: '28F', answers: ours }))[1]).toEqual({ kind: 'text', text: '28F', forwarded: false, answers: String(ours) });
  });

  it.each<Act>([
    inGroup('nice weather'),
    inGroup('/tonight@SomeOtherBot'),
    inGroup('ask @DuskwardTestBotFan'),
    { do: 'sends', person: GROWER, chat: GROUP, what: 'sticker' },
    { do: 'shares-place', person: GROWER, chat: GROUP, latitude: 1, longitude: 2 },
    { do: 'edits', person: GROWER, chat: GROUP, message: 9, text: 'nicer weather' },
    { do: 'sends', person: GROWER, chat: GROUP, what: 'new_chat_title', body: 'x' },
  ])('the talk of others is not handed over: %o', async (what) => {
    expect(await heardOf(what)).toEqual([]);
  });

  it('that becomes a supergroup has moved, told once', async () => {
    expect(await heardOf({ do: 'upgrades', person: GROWER, chat: GROUP, to: -1_001_234_567_890 })).toEqual([{ kind: 'moved', to: '-1001234567890' }]);
  });

  it('that removes us is blocked, and unblocked when it takes us back', async () => {
    expect(await heardOf({ do: 'blocks', person: GROWER, chat: GROUP }, { do: 'unblocks', person: GROWER, chat: GROUP })).toEqual([{ kind: 'blocked' }, { kind: 'unblocked' }]);
  });
});

describe('an update', () => {
  const me = { id: 7, username: 'DuskwardTestBot' };
  const chat = { id: GROWER, type: 'private', first_name: 'G' } as const;
  const NOW_S = 1_800_000_000;
  const textAt = (date: number): Parameters<typeof inboundOf>[0] => ({ update_id: 5, message: { message_id: 1, date, chat, from: { id: GROWER, is_bot: false, first_name: 'G' }, text: 'x' } });

  it.each([
    ['an hour ago, while we were away', NOW_S - 3600, NOW_S - 3600],
    ['a little ahead of our clock', NOW_S + 20, NOW_S],
    ['in another year, for our clock is on trial', NOW_S + 30_000_000, NOW_S],
    ['in the year before, for our clock is on trial', NOW_S - 30_000_000, NOW_S],
  ])('written %s', (_name, dateS, receivedAtS) => {
    expect(inboundOf(textAt(dateS), me, NOW_S)?.receivedAtS).toBe(receivedAtS);
  });

  it('of another bot is not answered, one of somebody who speaks as the group is', () => {
    const group = { id: GROUP, type: 'supergroup', title: 'T' } as const;
    const from = { id: 1_087_968_824, is_bot: true, first_name: 'Group' };
    const message = { message_id: 1, date: NOW_S, chat: group, text: '/tonight' };
    expect(inboundOf({ update_id: 5, message: { ...message, from } }, me, NOW_S)).toBeNull();
    expect(inboundOf({ update_id: 5, message: { ...message, from, sender_chat: group } }, me, NOW_S)).toMatchObject({ sender: String(GROUP) });
  });

  it.each([
    ['member', 'administrator'],
    ['left', 'kicked'],
  ] as const)('that changes our standing from %s to %s, still in or still out, is not handed over', (before, now) => {
    const standing = (status: typeof before | typeof now): object => ({ status, user: { id: me.id, is_bot: true, first_name: 'B' }, until_date: 0 });
    const update = { update_id: 5, my_chat_member: { chat: { id: GROUP, type: 'group', title: 'T' }, from: { id: GROWER, is_bot: false, first_name: 'G' }, date: NOW_S, old_chat_member: standing(before), new_chat_member: standing(now) } };
    expect(inboundOf(update as unknown as Parameters<typeof inboundOf>[0], me, NOW_S)).toBeNull();
  });

  it('of a kind that we did not ask for is not handed over', () => {
    expect(inboundOf({ update_id: 5 }, me, NOW_S)).toBeNull();
  });
});
