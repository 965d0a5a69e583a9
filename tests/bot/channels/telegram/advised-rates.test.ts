import { expect, it } from 'vitest';
import { realTime } from '../../../../bot/channels/telegram/real-time.js';
import { ADVISED_RATES } from '../../../fixtures/bot-api/rates.js';
import { startRig, chatOf } from './telegram-rig.js';

const CHATS = 45;
/** All at once would be more than this. Above the advised 30, because a busy machine lets messages arrive in bunches; see pace.test.ts for the exact limit. */
const RATES = { ...ADVISED_RATES, overall: { messages: 40, inMs: 1_000 } };
const GROUP = -77;

it('in real time the pace keeps within what the service advises: nothing is refused for being too much', async () => {
  const rig = await startRig({ api: { rates: RATES }, channel: { time: realTime } });
  const chats = Array.from({ length: CHATS }, (_, i) => i + 1);
  for (const person of chats) rig.api.act({ do: 'says', person, text: 'hello' });
  rig.api.act({ do: 'says', person: 1, chat: GROUP, text: '/start' });
  const long = ['a', 'b', 'c'].map((letter) => letter.repeat(3000)).join('\n');
  const results = await Promise.all([...chats.map((chat) => rig.channel.send(chatOf(chat), { text: 'cover the beds' })), rig.channel.send(chatOf(GROUP), { text: long })]);
  expect(results.map(({ kind }) => kind)).toEqual(Array.from({ length: CHATS + 1 }, () => 'sent'));
  expect(rig.api.calls.filter(({ status }) => status !== 200)).toEqual([]);
  expect(rig.api.sentTo(GROUP)).toHaveLength(3);
  await rig.close();
});

it('the stand-in refuses what goes faster', async () => {
  const rig = await startRig({ api: { rates: ADVISED_RATES } });
  rig.api.act({ do: 'says', person: 1, text: 'hello' });
  const url = `${rig.api.url}/bot${rig.api.token}/sendMessage?chat_id=1&text=x`;
  const statuses: number[] = [];
  for (let i = 0; i < 6; i++) statuses.push((await fetch(url)).status);
  expect(statuses).toEqual([200, 200, 200, 200, 200, 429]);
  await rig.close();
});
