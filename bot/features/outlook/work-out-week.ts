import { weekAhead, type ControlPlan, type Greenhouse, type LearnedHouse } from '../../../engine/index.js';
import type { LearningSoFar, OutcomeNight, StoredAction, WeatherAnswer } from '../../ports.js';
import { localTime } from '../../text/local-time.js';
import { buildWeek } from './build-week.js';
import type { Week } from './week.js';

/** All that a week is worked out from, as plain data: it may be sent to another thread. */
export interface WeekQuestion {
  readonly greenhouse: Greenhouse;
  readonly zone: string;
  readonly nowS: number;
  readonly answer: WeatherAnswer;
  /** What the grower said was done in the past fortnight. */
  readonly actions: readonly StoredAction[];
  /** What this house's readings may teach. */
  readonly learning: LearningSoFar;
  /** How crops came through nights of before. */
  readonly outcomes: readonly OutcomeNight[];
}

export type WorkOutWeek = (question: WeekQuestion) => Promise<Week>;

/** The nights that the forecast reaches, with a cold spell and what to prepare for it. */
export function workOutWeek({ greenhouse, zone, nowS, answer }: WeekQuestion, known: { readonly pastControls: ControlPlan; readonly learned: LearnedHouse | null; readonly cropShiftsK: ReadonlyMap<string, number> }): Week {
  const { pastControls, learned, cropShiftsK } = known;
  const week = weekAhead({ greenhouse, weather: answer.hours, ground: answer.ground, nowS, weatherAgeS: Math.max(0, nowS - answer.issuedAtS), pastControls, cropShiftsK, ...(learned === null ? {} : { learned }) });
  return buildWeek(week, { greenhouse, answer, time: localTime(zone) });
}
