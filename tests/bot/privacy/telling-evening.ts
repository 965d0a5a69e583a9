import type { Advisory } from '../../../bot/features/evening/advisory.js';
import type { EveningQuestion, WorkedOutEvening, WorkOut } from '../../../bot/features/evening/work-out-evening.js';
import type { Week } from '../../../bot/features/outlook/week.js';
import type { WeekQuestion, WorkOutWeek } from '../../../bot/features/outlook/work-out-week.js';
import { localTime } from '../../../bot/text/local-time.js';
import type { Greenhouse } from '../../../engine/index.js';
import { quickEvening } from '../../soak/quick-evening.js';

// Whole degrees that no neighbour's reading is rounded to, cold enough for work and questions.
const INSIDE = { mean: -6, q10: -9, q50: -6, q90: -3 };
const OUTSIDE = { mean: -13, q10: -16, q50: -13, q90: -10 };
const AT_RISK = { verdict: 'at-risk', damageProbability: 0.5 } as const;

/** Everything that an evening or a week was asked with, in words: whatever is handed over wrongly is seen. */
const toldOf = ({ greenhouse, zone, actions, answer }: Pick<EveningQuestion, 'greenhouse' | 'zone' | 'actions' | 'answer'>): string =>
  [
    `${greenhouse.name} at ${greenhouse.place.latitude}, ${greenhouse.place.longitude} (${zone})`,
    `beds: ${greenhouse.beds.map(({ name }) => name).join(', ')}`,
    `thermometers: ${greenhouse.thermometers.map(({ name }) => name).join(', ')}`,
    `said: ${actions.map(({ text, body }) => `${text} ${body}`).join('; ')}`,
    `weather of ${answer.source}`,
  ].join('. ');

/** An evening without physics that tells all it was asked with. */
export function tellingEvening(model: WorkedOutEvening): WorkOut {
  const quick = quickEvening(model);
  return async (question) => {
    const evening = await quick(question);
    const { greenhouse, issuedPlanId, supposing } = question;
    const plan: Advisory['plan'] = { ...evening.advisory.plan, id: `plan of ${greenhouse.name}`, heater: null, actions: greenhouse.beds.map(({ name }) => ({ action: 'cover' as const, target: name, by: evening.advisory.issuedAt })) };
    const places: Advisory['places'] = [{ place: 'inside', lowC: INSIDE, lowAt: evening.advisory.issuedAt }, { place: 'outside', lowC: OUTSIDE, lowAt: evening.advisory.issuedAt }];
    const crops = cropsOf(greenhouse).map(({ asked, bed }) => ({ ...evening.advisory.crops[0]!, crop: asked, asked, bed, ...AT_RISK, judgedLowC: INSIDE.mean }));
    const advisory: Advisory = {
      ...evening.advisory,
      plan,
      places,
      crops,
      alternatives: [{ actions: [], expectedLoss: 0, places, crops }],
      morning: greenhouse.beds.map(({ name }) => ({ action: 'uncover' as const, target: name, from: evening.advisory.issuedAt })),
      reasons: [{ code: 'clear-and-calm' }],
      cautions: [],
      text: `${evening.advisory.text} ${toldOf(question)}. Planned before: ${issuedPlanId ?? 'nothing'}.`,
    };
    return { advisory, choice: evening.choice, picturePng: null, ...(supposing === undefined ? {} : { supposed: { changes: [{ at: 'inside', bed: null, meanK: -1, q10K: -2, q90K: 0 }], insideLowC: INSIDE.mean, heatKwh: 0, crops: cropsOf(supposing.greenhouse).map((crop) => ({ ...crop, before: 0.2, after: 0.5 })) } }) };
  };
}

const cropsOf = ({ beds }: Greenhouse): readonly { readonly asked: string; readonly bed: string }[] => beds.flatMap(({ name, crops }) => crops.map((crop) => ({ asked: typeof crop === 'string' ? crop : crop.crop, bed: name })));

const DAY_S = 86_400;
const NIGHTS = 4;

/** A week of cold nights that tells all it was asked with. */
export const tellingWeek: WorkOutWeek = (question: WeekQuestion): Promise<Week> => {
  const { greenhouse, zone, nowS, answer } = question;
  const time = localTime(zone);
  const crops = cropsOf(greenhouse).map(({ asked, bed }) => ({ crop: asked, asked, bed, usual: AT_RISK, covered: { ...AT_RISK, damageProbability: 0.1 } }));
  const nights = Array.from({ length: NIGHTS }, (_, n) => nowS + n * DAY_S).map((atS) => ({ night: time.date(atS), day: `${time.day(atS)} (${toldOf(question)})`, outside: OUTSIDE, inside: INSIDE, crops }));
  const [{ night: from, day: fromDay }, { night: worst, day: worstDay }] = [nights[0]!, nights[1]!];
  const prepare = [{ what: 'cover-each-night' as const, beds: greenhouse.beds.map(({ name }) => name) }];
  return Promise.resolve({ greenhouse: greenhouse.name, weather: { source: answer.source, stale: false }, nights, spell: { from, fromDay, nights: NIGHTS, worst, worstDay, stores: [], prepare } });
};
