import type { Outgoing } from '../chat.js';
import { corrected, CROP_WORDS, outcomeKept } from '../conversation.js';
import { answerPending } from '../features/reading/answer-pending.js';
import type { ReadingMessage } from '../features/reading/judge.js';
import { readAnswer } from '../features/reading/read-answer.js';
import { readChoiceButton } from '../features/reading/log-reading.js';
import { dialogueWith, goesBefore, readPending, type Pending } from '../features/reading/pending.js';
import { answerTolerance, askedAgain, type ToleranceMessage } from '../features/tolerance/answer-tolerance.js';
import { toleranceNights } from '../features/evening/tolerance-nights.js';
import { readToleranceButton } from '../features/tolerance/ask-tolerance.js';
import type { InboundRow, StoredChat, WithinMemory } from '../journal.js';
import { meanings } from '../language/intent.js';
import { understand } from '../language/understand.js';
import type { Records } from '../ports.js';
import { READING_WORDS } from '../text/reading-text.js';
import { TOLERANCE_ASKS } from '../text/tolerance-text.js';
import { undoOnce } from '../several-answers.js';
import { askedOfChat } from './account-reply.js';
import type { Handled } from './handled.js';
import { takeHouseBack } from './house-taken-back.js';
import { subjectOf } from './subject.js';

/** What is written for a chat that answers, and what it remembers of its readings beside what else it is in the middle of. */
const recordsOfAnswer = (memory: WithinMemory, chat: StoredChat): Records => ({
  ...memory,
  keepPending: (pending) => memory.updateChat(chat.id, { dialogue: dialogueWith(pending, readPending(chat.dialogue, 0).rest) }),
  isPaused: chat.paused,
  isBusy: readPending(chat.dialogue, 0).rest !== null,
  askChat: (asked) => askedOfChat(asked, besideReadings(chat), memory),
});

/** The same for a message about something else: a question that is still open goes before a word that might take back what was kept. */
export function recordsBeside(memory: WithinMemory, chat: StoredChat): Records {
  const records = recordsOfAnswer(memory, chat);
  return { ...records, keepPending: async (pending) => (pending !== null && goesBefore(chat.dialogue, pending) && (await openChoice(chat, memory)) !== null ? undefined : records.keepPending!(pending)) };
}

/** The chat as everything else sees it: a question about a reading waits beside whatever is talked of. */
export const besideReadings = (chat: StoredChat): StoredChat => ({ ...chat, dialogue: readPending(chat.dialogue, 0).rest });

/** An answer to a question about a reading, or a word about one that was just kept; null for anything else. */
export async function readingReply(row: InboundRow, chat: StoredChat, { memory }: { readonly memory: Records }): Promise<Handled | null> {
  const { content } = row;
  const button = content.kind === 'press' ? readChoiceButton(content.button) : null;
  const care = content.kind === 'press' ? readToleranceButton(content.button) : null;
  if (chat.greenhouseId === null || (button === null && care === null && content.kind !== 'text')) return null;
  const { pending } = readPending(chat.dialogue, row.receivedAtS);
  const isOld = button !== null && (pending?.about !== 'choice' || pending.open[0]?.id !== button.id);
  if (isOld) return () => Promise.resolve([{ text: READING_WORDS.settledAlready }]);
  if (care !== null && (pending?.about !== 'tolerance' || pending.asks !== care.asks)) return () => Promise.resolve([{ text: TOLERANCE_ASKS.over }]);
  const subject = pending === null ? null : await subjectOf(chat.greenhouseId, memory);
  if (pending === null || subject === null) return null;
  const { greenhouse, zone, greenhouseId } = subject;
  const text = button !== null ? String(button.at + 1) : care !== null ? care.says : content.kind === 'text' ? content.text : '';
  const spoken = { greenhouseId, greenhouse, zone, receivedAtS: row.receivedAtS, text, units: greenhouse.grower.units };
  if (pending.about === 'told') return TAKES_BACK.has(readAnswer(text).kind) ? async (within) => [await taken(pending, spoken, recordsOfAnswer(within, chat))] : null;
  if (pending.about === 'outcome') return outcomeReply(pending, spoken, (within) => recordsOfAnswer(within, chat));
  if (pending.about === 'tolerance') return toleranceReply(pending, spoken, (within) => recordsOfAnswer(within, chat));
  const ready = await answerPending(pending, spoken, memory);
  return ready === null ? null : async (within) => [await ready(recordsOfAnswer(within, chat))];
}

const TAKES_BACK: ReadonlySet<string> = new Set(['no', 'drop']);

/** What was just told is taken back, with what it changed on the house. */
async function taken({ house, text }: Pick<Extract<Pending, { about: 'told' }>, 'house' | 'text'>, spoken: ReadingMessage, store: Records): Promise<Outgoing> {
  await store.keepPending?.(null);
  if (house === undefined) return corrected({ kind: 'fix' }, spoken, store, text);
  return { text: await takeHouseBack(spoken.greenhouseId, house, { store, atS: spoken.receivedAtS }) };
}

/** An answer to a question of how readily to call, or a word that takes the last one back; null for anything else. */
function toleranceReply(pending: Extract<Pending, { about: 'tolerance' }>, spoken: ReadingMessage, records: (within: WithinMemory) => Records): Handled | null {
  const { house } = pending;
  const message: ToleranceMessage = { ...spoken, nights: (greenhouse, store) => toleranceNights(store, { ...spoken, greenhouse }) };
  if (house !== undefined && readAnswer(spoken.text).kind === 'drop')
    return async (within) => {
      const { text } = await taken({ house, text: '' }, spoken, records(within));
      return [await askedAgain(pending, message, text, records(within))];
    };
  const ready = answerTolerance(pending, message, CROP_WORDS);
  return ready === null ? null : async (within) => [await ready(records(within))];
}

/** The answer beside a question about a reading that is still open: that waits on. */
export const besideQuestion =
  (chat: StoredChat, answer: Handled | null): Handled | null => {
    if (answer === null || readPending(chat.dialogue, 0).pending?.about !== 'choice') return answer;
    return async (memory) => {
      const said = await answer(memory);
      const found = await openChoice(chat, memory);
      if (found === null) return said;
      const now = await memory.chatById(chat.id);
      if (now !== null && readPending(now.dialogue, 0).pending?.about !== 'choice') await memory.updateChat(chat.id, { dialogue: dialogueWith(JSON.stringify(found), readPending(now.dialogue, 0).rest) });
      return said;
    };
  };

/** "Fine", where it was asked how crops came through; null for anything that says more. */
function outcomeReply({ crops, night }: Extract<Pending, { about: 'outcome' }>, spoken: ReadingMessage, records: (within: WithinMemory) => Records): Handled | null {
  const heard = { atS: spoken.receivedAtS, zone: spoken.zone, units: spoken.units, crops: CROP_WORDS };
  const plainly = understand({ ...heard, text: spoken.text });
  if (plainly.kind !== 'chat' && !(plainly.kind === 'unclear' && (plainly.asks === 'what' || plainly.asks === 'which-crop'))) return null;
  const said = spoken.text.replace(WHO, '');
  const meant = crops.flatMap((crop) => meanings(understand({ ...heard, text: `the ${crop} is ${said}` })).filter((one) => one.kind === 'outcome'));
  if (meant.length < crops.length) return null;
  return async (within) => {
    const store = records(within);
    const texts: string[] = [];
    for (const outcome of meant) texts.push(await outcomeKept({ ...outcome, ...(night === undefined ? {} : { night }) }, spoken, store));
    await store.keepPending?.(JSON.stringify({ about: 'told', text: spoken.text, atS: spoken.receivedAtS } satisfies Pending));
    return [{ text: undoOnce(texts).join('\n') }];
  };
}

/** "They are all", "it's": who is meant was asked. */
const WHO = /^\W*(?:(?:it|they|that|those|these|all|both|everything|of|them|is|are|it's|its|they're|looks?|was|were|came through) )+/iu;

const MOST_READINGS = 100;

/** The question about a reading that waits in a chat; null where the reading was settled otherwise meanwhile. */
async function openChoice({ dialogue, greenhouseId }: StoredChat, memory: Pick<Records, 'readings'>): Promise<Extract<Pending, { about: 'choice' }> | null> {
  const { pending } = readPending(dialogue, 0);
  if (pending?.about !== 'choice' || greenhouseId === null) return null;
  const rows = await memory.readings(greenhouseId, MOST_READINGS);
  return pending.open.some(({ id }) => rows.some((row) => row.id === id && row.judged === 'open')) ? pending : null;
}
