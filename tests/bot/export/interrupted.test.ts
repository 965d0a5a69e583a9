import { expect, it } from 'vitest';
import { postman } from '../../../bot/post/send-outbound.js';
import type { Channel, Outgoing } from '../../../bot/chat.js';
import { openSqliteStore } from '../../../bot/store/sqlite-store.js';
import { EVENING_S, newChat, outbound } from '../../contract/journal/rows.js';
import { storeFolder } from '../store/store-folder.js';

const MESSAGE: Outgoing = { text: 'Files to keep', documents: [{ name: 'duskward-readings.csv', text: '\uFEFFwords\r\n"Süd, ""cold"""\r\n' }] };

it('a document whose send was cut off by the end of the process goes out whole after the next start', async () => {
  const folder = storeFolder();
  const before = await openSqliteStore({ path: folder.path });
  await before.addOutbound(outbound(await newChat(before), 'reply:1', { message: MESSAGE }));
  const [row] = await before.dueOutbound(EVENING_S, 1);
  await before.beginSend(row!.id, EVENING_S);
  await before.close();

  const after = await openSqliteStore({ path: folder.path });
  expect(await after.recoverSends()).toBe(1);
  const sent: Outgoing[] = [];
  const channel: Channel = {
    name: 'telegram',
    listen: () => Promise.resolve(),
    acknowledge: () => Promise.resolve(),
    send: (_to, message) => {
      sent.push(message);
      return Promise.resolve({ kind: 'sent', message: '7' });
    },
  };
  const quiet = { info: () => undefined, warn: () => undefined, error: () => undefined };
  const post = postman({ memory: after, channels: new Map([['telegram', channel]]), clock: { nowS: () => EVENING_S }, log: quiet, count: () => undefined });
  await post.sendDue();
  await post.idle();
  expect(sent).toEqual([MESSAGE]);
  expect(await after.dueOutbound(EVENING_S, 1)).toEqual([]);
  await after.close();
  folder.remove();
});
