import type { Outgoing } from './chat.js';
import type { Records, StoredAction } from './ports.js';
import { escapeHtml } from './text/html.js';
import { UNDO } from './text/undo-text.js';

/** The answers below each other; what two of them say alike is said once. */
export function inOneMessage(all: readonly Outgoing[]): Outgoing {
  const answers = all.filter(({ text }, at) => all.findIndex((other) => other.text === text) === at);
  const [first] = answers;
  if (first !== undefined && answers.length === 1) return first;
  const buttons = answers.flatMap((answer) => answer.buttons ?? []);
  const picturePng = answers.find((answer) => answer.picturePng !== undefined)?.picturePng;
  const documents = answers.flatMap((answer) => answer.documents ?? []);
  return {
    text: undoOnce(answers.map(({ text }) => text)).join('\n\n'),
    ...(answers.some(({ html }) => html !== undefined) ? { html: answers.map(({ html, text }) => html ?? escapeHtml(text)).join('\n\n') } : {}),
    ...(buttons.length === 0 ? {} : { buttons }),
    ...(picturePng === undefined ? {} : { picturePng }),
    ...(documents.length === 0 ? {} : { documents }),
  };
}

/** How to take back is said with the last that can be: it takes back all of the message. */
export const undoOnce = (texts: readonly string[]): readonly string[] => texts.map((text, at) => (texts.slice(at + 1).some((later) => later.includes(UNDO)) ? text.replace(` ${UNDO}`, '') : text));

/** The records with deeds that are not written yet: what is asked in one breath with a deed counts on it already. */
export function withDeedsTold(store: Records): Records {
  const told: StoredAction[] = [];
  return {
    ...store,
    addAction: (row) => {
      const deed = { ...row, id: 0 };
      told.push(deed);
      return Promise.resolve(deed);
    },
    actions: async (greenhouseId, sinceS) => [...(await store.actions(greenhouseId, sinceS)), ...told],
  };
}
