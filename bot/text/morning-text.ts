import type { AdvisoryMorning } from '../features/evening/advisory.js';
import { morningSentence } from './action-text.js';

/** The forecast is not in the question: who has read it reads the thermometer by it. */
const QUESTION = 'What is the lowest on the thermometer inside? A number like -1.5 will do. Then reset it.';

export function morningText({ steps, asks }: { steps: readonly AdvisoryMorning[]; asks: boolean }): string {
  const plan = steps.length === 0 ? [] : ['Good morning. Today:', ...steps.map((step) => `- ${morningSentence(step)}`)];
  if (!asks) return plan.join('\n');
  return [...plan, ...(plan.length > 0 ? [''] : []), steps.length === 0 ? `Good morning. ${QUESTION}` : QUESTION].join('\n');
}

export const outcomeQuestion = (crops: readonly string[], dayName: string): string => `How did ${crops.join(' and ')} come through the night of ${dayName}? For example "the kale is fine", "lettuce is mush".`;

export const reminderText = (text: string): string => `Still to do before dark, if you have not yet:\n${text}\nSay "done" or "not tonight".`;
