import { nightsLearnedFrom, planEvening, thresholdShiftsK, type EveningInput, type EveningPlan, type Greenhouse, type ToleranceNights } from '../../../engine/index.js';
import type { LearningSoFar, OutcomeNight, StoredAction, WeatherAnswer } from '../../ports.js';
import { advisoryText } from '../../text/advisory-text.js';
import { localTime, type LocalTime } from '../../text/local-time.js';
import type { Advisory } from './advisory.js';
import { buildAdvisory } from './build-advisory.js';
import { cropName } from './crop-name.js';
import { deedsTonight } from './deeds-tonight.js';
import { learnEvening, textToKeep } from './learned-evening.js';
import { pastControls } from './past-controls.js';
import { plantsSeen } from './plants-seen.js';
import { supposedNight, type Supposed, type Supposing } from './supposed-night.js';

/** All that an evening is worked out from, as plain data: it may be sent to another thread. */
export interface EveningQuestion {
  readonly greenhouse: Greenhouse;
  readonly zone: string;
  readonly nowS: number;
  readonly answer: WeatherAnswer;
  /** What the grower said was done in the past fortnight and tonight. */
  readonly actions: readonly StoredAction[];
  /** The plan that was sent for this night before. */
  readonly issuedPlanId: string | null;
  /** What this house's readings may teach; absent where nothing is remembered. */
  readonly learning?: LearningSoFar;
  /** How crops came through nights of before. */
  readonly outcomes?: readonly OutcomeNight[];
  /** What nights of before say of how readily to call the grower out. */
  readonly toleranceNights?: ToleranceNights;
  /** The same night otherwise, beside the plan for it. */
  readonly supposing?: Supposing;
}

/** What comes of it, as plain data. */
export interface WorkedOutEvening {
  readonly advisory: Advisory;
  readonly choice: EveningPlan['choice']['reason'];
  /** The picture of the night, base64; null where none was drawn. */
  readonly picturePng: string | null;
  /** What was asked with `supposing`. */
  readonly supposed?: Supposed;
  /** What was learned, as text, where it is more than was kept before. */
  readonly learned?: string;
}

export type WorkOut = (question: EveningQuestion) => Promise<WorkedOutEvening>;

/** Plan and words of an evening. */
export function workOutEvening(question: EveningQuestion): { advisory: Advisory; plan: EveningPlan; supposed?: Supposed; learned?: string } {
  const { greenhouse, zone, nowS, answer, actions } = question;
  const time = localTime(zone);
  const controls = pastControls(actions, greenhouse);
  const kept = question.learning ? learnEvening({ greenhouse, answer, nowS, controls }, question.learning) : null;
  const isLearned = kept !== null && kept.house.rows.length > 0;
  const toKeep = question.learning ? textToKeep(kept, question.learning.learned, answer) : null;
  const input: EveningInput = {
    greenhouse,
    weather: answer.hours,
    ground: answer.ground,
    nowS,
    bedtimeS: bedtime(greenhouse, time, nowS),
    weatherAgeS: Math.max(0, nowS - answer.issuedAtS),
    pastControls: controls,
    doneTonight: deedsTonight(actions, { greenhouse, nowS }),
    ...(isLearned ? { learned: kept.house } : {}),
    cropShiftsK: thresholdShiftsK(plantsSeen(question.outcomes ?? [], question.learning?.readings ?? [], question)),
    ...(question.toleranceNights === undefined ? {} : { toleranceNights: question.toleranceNights }),
    ...(question.issuedPlanId === null ? {} : { issuedPlanId: question.issuedPlanId }),
  };
  const plan = planEvening(input);
  const facts = buildAdvisory(plan, { greenhouse, answer, nowS, time, learnedNights: isLearned ? nightsLearnedFrom(kept.house, greenhouse.place) : 0, keptReadings: question.learning?.readings.length ?? 0 });
  return {
    plan,
    advisory: { ...facts, text: advisoryText(facts, { units: greenhouse.grower.units, dayName: time.day(plan.night.sunsetS), cropName }) },
    ...(question.supposing === undefined ? {} : { supposed: supposedNight(question.supposing, { input, plan, actions }) }),
    ...(toKeep === null ? {} : { learned: toKeep }),
  };
}

/** Works it out where it is asked, without a picture. */
export const workOutHere: WorkOut = (question) => {
  const { plan, ...evening } = workOutEvening(question);
  return Promise.resolve({ ...evening, choice: plan.choice.reason, picturePng: null });
};

/** Bedtime of the evening that comes, or of the one that is running: before five in the morning it was yesterday's. */
const SMALL_HOURS_S = 5 * 3600;
function bedtime(greenhouse: Greenhouse, time: LocalTime, nowS: number): number {
  return time.atClock(nowS - SMALL_HOURS_S, greenhouse.grower.bedtime);
}
