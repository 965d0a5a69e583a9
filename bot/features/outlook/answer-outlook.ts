import { cropFamilies, cropFamilyOf, type Greenhouse } from '../../../engine/index.js';
import { PAST_S, type Clock, type Records, type WeatherSource } from '../../ports.js';
import { beyondForecast, cropNightText, nightText, weekText } from '../../text/outlook-text.js';
import type { Week } from './week.js';
import type { WorkOutWeek } from './work-out-week.js';

export interface OutlookSubject {
  readonly greenhouseId: string;
  readonly greenhouse: Greenhouse;
  readonly zone: string;
}

export interface OutlookPorts {
  readonly clock: Clock;
  readonly weather: WeatherSource;
  readonly store: Pick<Records, 'actions' | 'learnedFrom'>;
  /** Works the week out, perhaps in a thread of its own. */
  readonly workOutWeek: WorkOutWeek;
}

/** The nights that the forecast reaches, on what the grower is known to have done. */
export async function weekOf({ greenhouseId, greenhouse, zone }: OutlookSubject, { clock, weather, store, workOutWeek }: OutlookPorts): Promise<Week> {
  const nowS = Math.floor(clock.nowS());
  const { latitude, longitude, elevation } = greenhouse.place;
  const answer = await weather.weatherAt({ latitude, longitude, elevationM: elevation ?? null });
  return workOutWeek({ greenhouse, zone, nowS, answer, actions: await store.actions(greenhouseId, nowS - PAST_S), ...(await store.learnedFrom(greenhouseId)) });
}

/** "Any frost this week", "how cold on Friday". */
export function answerOutlook(week: Week, wanted: { night?: string; nights?: number }, units: 'C' | 'F'): string {
  if (wanted.night === undefined) return weekText({ ...week, nights: week.nights.slice(0, wanted.nights) }, units);
  const night = week.nights.find(({ night: date }) => date === wanted.night);
  return night ? nightText(night, units) : beyondForecast(week.nights.at(-1)?.day ?? null);
}

/** "Will the kale survive on Friday": as the house stands, and covered. */
export function answerCropAhead(week: Week, wanted: { crops: readonly string[]; night: string }): string {
  const night = week.nights.find(({ night: date }) => date === wanted.night);
  if (!night) return beyondForecast(week.nights.at(-1)?.day ?? null);
  const means = (name: string, { crop, asked }: { crop: string; asked: string }): boolean => crop === name || asked === name || (cropFamilies.some((family) => family.name === name) && cropFamilyOf(crop)?.name === name);
  return cropNightText(night, night.crops.filter((crop) => wanted.crops.some((name) => means(name, crop))), wanted.crops);
}
