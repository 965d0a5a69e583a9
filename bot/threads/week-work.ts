import { thresholdShiftsK } from '../../engine/index.js';
import { learnEvening } from '../features/evening/learned-evening.js';
import { pastControls } from '../features/evening/past-controls.js';
import { plantsSeen } from '../features/evening/plants-seen.js';
import { workOutWeek, type WeekQuestion, type WorkOutWeek } from '../features/outlook/work-out-week.js';
import type { Week } from '../features/outlook/week.js';

/** A week on what the grower is known to have done and read. */
export function weekWork(question: WeekQuestion): Week {
  const controls = pastControls(question.actions, question.greenhouse);
  const kept = learnEvening({ ...question, controls }, question.learning);
  const cropShiftsK = thresholdShiftsK(plantsSeen(question.outcomes, question.learning.readings, question));
  return workOutWeek(question, { pastControls: controls, learned: kept !== null && kept.house.rows.length > 0 ? kept.house : null, cropShiftsK });
}

/** Works it out where it is asked. */
export const workOutWeekHere: WorkOutWeek = (question) => Promise.resolve(weekWork(question));
