import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { chatOf, GROUP, GROWER, pngOf, startRig, until, type Rig } from './telegram-rig.js';

const TOPIC = 77;
let rig: Rig;
beforeEach(async () => {
  rig = await startRig();
  rig.api.act({ do: 'says', person: GROWER, chat: GROUP, topic: TOPIC, text: '/tonight' });
});
afterEach(() => rig.close());

const topicsSent = (): readonly (number | null)[] => rig.api.sentTo(GROUP).map(({ topic }) => topic);

describe('a topic of a group', () => {
  it('comes with what was said or pressed in it, and with nothing else', async () => {
    void rig.listen();
    await rig.channel.send(chatOf(GROUP), { text: 'Cover', topic: String(TOPIC), buttons: [[{ id: 'did', label: 'Done' }]] });
    rig.api.act({ do: 'presses', person: GROWER, chat: GROUP, message: rig.api.sentTo(GROUP)[0]!.id, button: 'did' });
    rig.api.act({ do: 'says', person: GROWER, chat: GROUP, text: '/help' });
    await until('all are taken', () => rig.taken.length === 3);
    expect(rig.taken.map(({ topic }) => topic)).toEqual([String(TOPIC), String(TOPIC), undefined]);
  });

  it('gets what is sent to it: words, a picture, each part of a long text', async () => {
    await rig.channel.send(chatOf(GROUP), { text: 'words', topic: String(TOPIC) });
    await rig.channel.send(chatOf(GROUP), { text: ['a', 'b'].map((letter) => letter.repeat(3000)).join('\n\n'), picturePng: pngOf(1200, 675), topic: String(TOPIC) });
    await rig.channel.send(chatOf(GROUP), { text: 'to the group' });
    expect(topicsSent()).toEqual([TOPIC, TOPIC, TOPIC, TOPIC, null]);
  });

  it('that is there no more: the words go to the group', async () => {
    rig.api.world.chat(GROUP).topics.clear();
    expect(await rig.channel.send(chatOf(GROUP), { text: 'words', topic: String(TOPIC) })).toMatchObject({ kind: 'sent' });
    expect(topicsSent()).toEqual([null]);
  });
});
