import { eveningQuestion } from '../../bot/features/evening/issue-advisory.js';
import type { EveningQuestion, WorkedOutEvening, WorkOut } from '../../bot/features/evening/work-out-evening.js';
import { localTime } from '../../bot/text/local-time.js';
import { demoSource } from '../../bot/weather/demo.js';
import { nightSpan } from '../../engine/index.js';
import type { Grower } from './world.js';

/** An evening that was really worked out, made into that of any other night and house: all that is left out is the physics. */
export const quickEvening = (model: WorkedOutEvening): WorkOut => (question) => Promise.resolve(asOf(question, model));

/** The words of such an evening: they tell house and night. */
export const quickWords = (house: string, night: string): string => `Tonight, ${night}: cover the beds of ${house}.`;

function asOf({ greenhouse, zone, nowS }: EveningQuestion, model: WorkedOutEvening): WorkedOutEvening {
  const night = localTime(zone).date(nightSpan(nowS, greenhouse.place).sunsetS);
  const advisory = { ...model.advisory, greenhouse: greenhouse.name, night, issuedAt: new Date(nowS * 1000).toISOString(), text: quickWords(greenhouse.name, night) };
  return { ...model, advisory, choice: 'gain-worth-it' };
}

/** The evening to make others from. */
export async function modelEvening({ id, greenhouse, zone }: Grower, atS: number, workOut: WorkOut): Promise<WorkedOutEvening> {
  const clock = { nowS: () => atS };
  return workOut(await eveningQuestion({ greenhouseId: id, greenhouse, zone }, { clock, weather: demoSource(clock), store: null }));
}
