import { condition } from './condition.js';
import { did } from './did.js';
import { unclear, type IntentKind, type Unclear } from './intent.js';
import type { Message } from './message.js';
import { outcome } from './outcome.js';
import { isQuestion } from './question.js';

const DEED = / (?:covered|uncovered|closed|shut|opened|turned|switched|put|picked|harvested|lit|pulled|drew|@\w+ (?:is |are |now )?(?:on|off|shut|closed|down|open|running)) /;

/** The stretches of the message between its stops, each as a message without numbers. */
const stretchesWithoutNumbers = (message: Message): readonly Message[] =>
  message.form
    .split(/ (?:[;,]|and|but) |(?<= \?) /)
    .map((stretch) => ` ${stretch.trim()} `)
    .filter((form) => !form.includes('#') && form.trim() !== '')
    .map((form) => {
      const said = form.replace(/ [?;,:/-](?= )/g, '');
      return { ...message, form, said, asks: isQuestion(form, said), temps: [] };
    });

/** A reading told together with something else of weight: one of them would be lost if the other were taken. */
export function readingAnd(message: Message): Unclear | null {
  for (const stretch of stretchesWithoutNumbers(message)) {
    const also: IntentKind | null = stretch.asks
      ? 'advice'
      : DEED.test(stretch.said) && did(stretch)?.kind === 'did'
        ? 'did'
        : stretch.hits.length > 0 && stretch.form.includes('%') && outcome(stretch)?.kind === 'outcome'
          ? 'outcome'
          : (condition(stretch)?.kind ?? null);
    if (also !== null) return unclear('one-at-a-time', { choices: ['reading', also] });
  }
  return null;
}

/** Whether the stretch with the number is itself what is asked ("will it go below 28?"). */
export const asksWithNumber = (message: Message): boolean =>
  message.form.split(/ [;,] |(?<= \?) /).some((stretch) => stretch.includes('#') && isQuestion(` ${stretch.trim()} `, ` ${stretch.replace(/[?;,:]/g, '').trim()} `));
