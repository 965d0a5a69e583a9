/** Runs in a thread of its own: an evening or a week takes seconds of arithmetic, in which the assistant must go on listening. */
import { parentPort } from 'node:worker_threads';
import { Resvg } from '@resvg/resvg-js';
import { drawNight } from '../chart/draw-night.js';
import { FONT_FAMILY, FONT_FILES } from '../chart/font-files.js';
import { nightLayout } from '../chart/night-layout.js';
import { pictureOfPlan } from '../chart/picture-of-plan.js';
import { workOutEvening, type EveningQuestion, type WorkedOutEvening } from '../features/evening/work-out-evening.js';
import type { Week } from '../features/outlook/week.js';
import type { WeekQuestion } from '../features/outlook/work-out-week.js';
import type { ThreadReply, ThreadTask } from './thread-pool.js';
import { weekWork } from './week-work.js';

export type NightQuestion = { readonly about: 'evening'; readonly evening: EveningQuestion } | { readonly about: 'week'; readonly week: WeekQuestion };
export type NightAnswer = WorkedOutEvening | Week;

function answer(question: EveningQuestion): WorkedOutEvening {
  const { advisory, plan, supposed } = workOutEvening(question);
  return { advisory, choice: plan.choice.reason, picturePng: drawn(plan, question, advisory), ...(supposed ? { supposed } : {}) };
}

/** A picture that cannot be drawn costs the grower the picture, never the advisory. */
function drawn(plan: Parameters<typeof pictureOfPlan>[0], { greenhouse, zone }: EveningQuestion, advisory: WorkedOutEvening['advisory']): string | null {
  try {
    const svg = drawNight(nightLayout(pictureOfPlan(plan, { greenhouse, zone, advisory })));
    const png = new Resvg(svg, { font: { loadSystemFonts: false, fontFiles: Object.values(FONT_FILES), defaultFontFamily: FONT_FAMILY } }).render().asPng();
    return Buffer.from(png).toString('base64');
  } catch {
    return null;
  }
}

parentPort?.on('message', ({ id, question }: ThreadTask<NightQuestion>) => {
  let reply: ThreadReply<NightAnswer>;
  try {
    reply = { id, answer: question.about === 'week' ? weekWork(question.week) : answer(question.evening) };
  } catch (error) {
    reply = { id, fault: error instanceof Error ? error.message : String(error) };
  }
  parentPort?.postMessage(reply);
});
