import type { Channel, ChannelName, ChatAddress, Outgoing, SendResult } from '../../../bot/chat.js';
import type { Memory } from '../../../bot/journal.js';
import { postman, type Postman } from '../../../bot/post/send-outbound.js';
import { openSqliteStore } from '../../../bot/store/sqlite-store.js';

export const EVENING_S = 1_768_424_400;

export interface PostRig {
  readonly memory: Memory;
  readonly clock: { atS: number; nowS(): number };
  readonly post: Postman;
  /** What reached the channel, in order: "chat text". */
  readonly tried: readonly string[];
  readonly counted: readonly string[];
  /** What a channel does with a message; takes it unless told otherwise. */
  onSend: (to: ChatAddress, message: Outgoing) => Promise<SendResult>;
  /** Puts a message into the tray; the id of its chat. */
  put(chat: string, text: string, more?: { readonly channel?: ChannelName; readonly uselessAfterS?: number | null }): Promise<string>;
  /** Sends until nothing more goes now. */
  sendAll(): Promise<void>;
}

/** A postman with two channels that do as the test says, and a clock that the test turns. */
export async function postRig(more: { readonly wrap?: (memory: Memory) => Memory } = {}): Promise<PostRig> {
  const opened = await openSqliteStore({ path: ':memory:' });
  const memory = more.wrap?.(opened) ?? opened;
  const clock = { atS: EVENING_S, nowS: (): number => clock.atS };
  const tried: string[] = [];
  const counted: string[] = [];
  const channel = (name: ChannelName): readonly [ChannelName, Channel] => [
    name,
    {
      name,
      listen: () => Promise.resolve(),
      acknowledge: () => Promise.resolve(),
      send: (to, message) => {
        tried.push(`${to.chat} ${message.text}`);
        return rig.onSend(to, message);
      },
    },
  ];
  const quiet = { info: () => undefined, warn: () => undefined, error: () => undefined };
  const post = postman({ memory, channels: new Map([channel('telegram'), channel('sms')]), clock, log: quiet, count: (event) => void counted.push(event) });
  const rig: PostRig = {
    memory,
    clock,
    post,
    tried,
    counted,
    onSend: () => Promise.resolve({ kind: 'sent', message: String(tried.length) }),
    put: async (chat, text, { channel: name = 'telegram', uselessAfterS = EVENING_S + 86_400 } = {}) => {
      const { id } = await memory.openChat({ channel: name, chat }, { isGroup: false, atS: EVENING_S });
      await memory.addOutbound({ chatId: id, key: `${chat} ${text}`, message: { text }, notBeforeS: 0, uselessAfterS });
      return id;
    },
    sendAll: async () => {
      while ((await post.sendDue()) > 0) await post.idle();
    },
  };
  return rig;
}
