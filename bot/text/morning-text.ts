import type { AdvisoryMorning } from '../features/evening/advisory.js';
import { morningSentence, mergedMorning } from './action-text.js';
import type { TempUnits } from './temperature.js';

/** The forecast is not in the question: who has read it reads the thermometer by it. */
const question = (units: TempUnits): string => `What is the lowest on the thermometer inside? A number like ${units === 'F' ? '28' : '-1.5'} will do. Then reset it.`;

export function morningText({ steps, asks, units }: { steps: readonly AdvisoryMorning[]; asks: boolean; units: TempUnits }): string {
  const plan = steps.length === 0 ? [] : ['Good morning. Today:', ...mergedMorning(steps).map((step) => `- ${morningSentence(step)}`)];
  if (!asks) return plan.join('\n');
  return [...plan, ...(plan.length > 0 ? [''] : []), steps.length === 0 ? `Good morning. ${question(units)}` : question(units)].join('\n');
}

export const outcomeQuestion = (crops: readonly string[], dayName: string): string => `How did ${crops.join(' and ')} come through the night of ${dayName}? For example "the kale is fine", "lettuce is mush".`;

export const reminderText = (text: string): string => `Still to do before dark, if you have not yet:\n${text}\nSay "done" or "not tonight".`;
