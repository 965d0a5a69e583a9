import { answerPending } from '../features/reading/answer-pending.js';
import { readChoiceButton } from '../features/reading/log-reading.js';
import { dialogueWith, goesBefore, readPending } from '../features/reading/pending.js';
import type { InboundRow, StoredChat, WithinMemory } from '../journal.js';
import type { Records } from '../ports.js';
import { READING_WORDS } from '../text/reading-text.js';
import { askedOfChat } from './account-reply.js';
import type { Handled } from './handled.js';
import { subjectOf } from './subject.js';

/** What is written for a chat that answers, and what it remembers of its readings beside what else it is in the middle of. */
const recordsOfAnswer = (memory: WithinMemory, chat: StoredChat): Records => ({
  ...memory,
  keepPending: (pending) => memory.updateChat(chat.id, { dialogue: dialogueWith(pending, readPending(chat.dialogue, 0).rest) }),
  askChat: (asked) => askedOfChat(asked, besideReadings(chat), memory),
});

/** The same for a message about something else: a question that is still open goes before a word that might take back what was kept. */
export function recordsBeside(memory: WithinMemory, chat: StoredChat): Records {
  const records = recordsOfAnswer(memory, chat);
  return { ...records, keepPending: (pending) => (pending !== null && goesBefore(chat.dialogue, pending) ? Promise.resolve() : records.keepPending!(pending)) };
}

/** The chat as everything else sees it: a question about a reading waits beside whatever is talked of. */
export const besideReadings = (chat: StoredChat): StoredChat => ({ ...chat, dialogue: readPending(chat.dialogue, 0).rest });

/** An answer to a question about a reading, or a word about one that was just kept; null for anything else. */
export async function readingReply(row: InboundRow, chat: StoredChat, { memory }: { readonly memory: Records }): Promise<Handled | null> {
  const { content } = row;
  const button = content.kind === 'press' ? readChoiceButton(content.button) : null;
  if (chat.greenhouseId === null || (button === null && content.kind !== 'text')) return null;
  const { pending } = readPending(chat.dialogue, row.receivedAtS);
  const isOld = button !== null && (pending?.about !== 'choice' || pending.open[0]?.id !== button.id);
  if (isOld) return () => Promise.resolve([{ text: READING_WORDS.settledAlready }]);
  const subject = pending === null ? null : await subjectOf(chat.greenhouseId, memory);
  if (pending === null || subject === null) return null;
  const { greenhouse, zone, greenhouseId } = subject;
  const text = button !== null ? String(button.at + 1) : content.kind === 'text' ? content.text : '';
  const ready = await answerPending(pending, { greenhouseId, greenhouse, zone, receivedAtS: row.receivedAtS, text, units: greenhouse.grower.units }, memory);
  return ready === null ? null : async (within) => [await ready(recordsOfAnswer(within, chat))];
}
