import { cropFamilies, cropFamilyOf, weekAhead, type ControlPlan, type Greenhouse } from '../../../engine/index.js';
import type { Clock, WeatherSource } from '../../ports.js';
import { localTime } from '../../text/local-time.js';
import { beyondForecast, cropNightText, nightText, weekText } from '../../text/outlook-text.js';
import { buildWeek } from './build-week.js';
import type { Week } from './week.js';

export interface OutlookSubject {
  readonly greenhouse: Greenhouse;
  readonly zone: string;
}

/** The nights that the forecast reaches, with a cold spell and what to prepare for it. */
export async function weekOf(subject: OutlookSubject, ports: { clock: Clock; weather: WeatherSource }, past: ControlPlan): Promise<Week> {
  const { greenhouse } = subject;
  const nowS = Math.floor(ports.clock.nowS());
  const { latitude, longitude, elevation } = greenhouse.place;
  const answer = await ports.weather.weatherAt({ latitude, longitude, elevationM: elevation ?? null });
  const week = weekAhead({ greenhouse, weather: answer.hours, ground: answer.ground, nowS, weatherAgeS: Math.max(0, nowS - answer.issuedAtS), pastControls: past });
  return buildWeek(week, { greenhouse, answer, time: localTime(subject.zone) });
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
