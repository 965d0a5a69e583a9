import { learnEvening } from '../features/evening/learned-evening.js';
import { pastControls } from '../features/evening/past-controls.js';
import { workOutWeek, type WeekQuestion, type WorkOutWeek } from '../features/outlook/work-out-week.js';
import type { Week } from '../features/outlook/week.js';

/** A week on what the grower is known to have done and read. */
export function weekWork(question: WeekQuestion): Week {
  const controls = pastControls(question.actions, question.greenhouse);
  const kept = learnEvening({ ...question, controls }, question.learning);
  return workOutWeek(question, controls, kept !== null && kept.house.rows.length > 0 ? kept.house : null);
}

/** Works it out where it is asked. */
export const workOutWeekHere: WorkOutWeek = (question) => Promise.resolve(weekWork(question));
