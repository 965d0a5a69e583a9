import type { InboundRow, WithinMemory } from '../journal.js';
import type { ByMessage, Told } from '../ports.js';
import { CHAT_WORDS } from '../text/chat-words.js';
import type { Handled } from './handled.js';

/** A message by its channel's id, which counts within its chat. */
export const keyOfMessage = ({ channel, chat }: Pick<InboundRow, 'channel' | 'chat'>, message: string): string => `${channel}:${chat}:${message}`;

/** The memory in which all that a message tells is known by it, so that an edit can take its place. */
export function toldBy(row: InboundRow, memory: WithinMemory): WithinMemory {
  const { content } = row;
  const id = content.kind === 'text' || content.kind === 'edited' ? content.message : undefined;
  if (id === undefined) return memory;
  const message = keyOfMessage(row, id);
  const marked = <T extends ByMessage>(told: T): T => ({ message, ...told });
  return {
    ...memory,
    addReading: (told) => memory.addReading(marked(told)),
    addAction: (told) => memory.addAction(marked(told)),
    addOutcome: (told) => memory.addOutcome(marked(told)),
    addMark: (told) => memory.addMark(marked(told)),
  };
}

/** The answer to an edited message, after what it told before is taken back. */
export const inPlaceOf = (before: readonly Told[], atS: number, answer: Handled): Handled =>
  before.length === 0
    ? answer
    : async (memory) => {
        for (const told of before) await memory.withdrawTold(told, atS);
        const [first, ...others] = await answer(memory);
        return first === undefined ? [{ text: CHAT_WORDS.edited }] : [{ ...first, text: `${CHAT_WORDS.edited}\n${first.text}` }, ...others];
      };
