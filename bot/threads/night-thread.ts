/** Runs in a thread of its own: an evening or a week takes seconds of arithmetic, in which the assistant must go on listening. */
import { parentPort } from 'node:worker_threads';
import { Resvg } from '@resvg/resvg-js';
import { drawNight } from '../chart/draw-night.js';
import { drawNights } from '../chart/draw-nights.js';
import { FONT_FAMILY, FONT_FILES } from '../chart/font-files.js';
import { nightLayout } from '../chart/night-layout.js';
import { nightsLayout } from '../chart/nights-layout.js';
import { pictureOfPlan } from '../chart/picture-of-plan.js';
import { workOutEvening, type EveningQuestion, type WorkedOutEvening } from '../features/evening/work-out-evening.js';
import type { Week } from '../features/outlook/week.js';
import type { WeekQuestion } from '../features/outlook/work-out-week.js';
import type { NightsPicture } from '../features/record/nights-picture.js';
import type { ThreadReply, ThreadTask } from './thread-pool.js';
import { weekWork } from './week-work.js';

export type NightQuestion = { readonly about: 'evening'; readonly evening: EveningQuestion } | { readonly about: 'week'; readonly week: WeekQuestion } | { readonly about: 'nights'; readonly nights: NightsPicture };
export type NightAnswer = WorkedOutEvening | Week | string | null;

function answer(question: EveningQuestion): WorkedOutEvening {
  const { plan, ...evening } = workOutEvening(question);
  return { ...evening, choice: plan.choice.reason, picturePng: drawn(() => drawNight(nightLayout(pictureOfPlan(plan, { ...question, advisory: evening.advisory })))) };
}

/** A picture that cannot be drawn costs the grower the picture, never the words. */
function drawn(svg: () => string): string | null {
  try {
    const png = new Resvg(svg(), { font: { loadSystemFonts: false, fontFiles: Object.values(FONT_FILES), defaultFontFamily: FONT_FAMILY } }).render().asPng();
    return Buffer.from(png).toString('base64');
  } catch {
    return null;
  }
}

function answerTo(question: NightQuestion): NightAnswer {
  switch (question.about) {
    case 'week':
      return weekWork(question.week);
    case 'nights':
      return drawn(() => drawNights(nightsLayout(question.nights)));
    case 'evening':
      return answer(question.evening);
  }
}

parentPort?.on('message', ({ id, question }: ThreadTask<NightQuestion>) => {
  let reply: ThreadReply<NightAnswer>;
  try {
    reply = { id, answer: answerTo(question) };
  } catch (error) {
    reply = { id, fault: error instanceof Error ? error.message : String(error) };
  }
  parentPort?.postMessage(reply);
});
