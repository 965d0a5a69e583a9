import { pastControls } from '../features/evening/past-controls.js';
import { workOutWeek, type WeekQuestion, type WorkOutWeek } from '../features/outlook/work-out-week.js';
import type { Week } from '../features/outlook/week.js';

/** A week on what the grower is known to have done. */
export const weekWork = (question: WeekQuestion): Week => workOutWeek(question, pastControls(question.actions, question.greenhouse));

/** Works it out where it is asked. */
export const workOutWeekHere: WorkOutWeek = (question) => Promise.resolve(weekWork(question));
