import { celsiusToKelvin, judgeReading, nightSpan, type ExpectedTemp, type GateVerdict, type Greenhouse, type ThermometerPast } from '../../../engine/index.js';
import type { Reading } from '../../language/intent.js';
import type { Records, StoredReading } from '../../ports.js';
import type { TempUnits } from '../../text/temperature.js';
import { asTyped, type AsTyped } from './as-typed.js';
import { forecastLow, type ForecastLow } from './forecast-low.js';
import { MORNING_IN_LOWS_S, nightOf, type NightOfReading } from './night-of.js';
import { keyOf, thermometerSaid, type Thermometer } from './thermometer.js';

/** A message that tells of temperatures, with all that is needed to judge them. */
export interface ReadingMessage {
  readonly greenhouseId: string;
  readonly greenhouse: Greenhouse;
  readonly zone: string;
  readonly receivedAtS: number;
  readonly text: string;
  readonly units: TempUnits;
}

/** One temperature of a message, judged. */
export interface JudgedReading {
  readonly tempC: number;
  readonly typed: AsTyped;
  readonly statistic: Reading['stat'];
  readonly thermometer: Thermometer;
  readonly night: NightOfReading;
  /** What was said of the night before it; null where nothing went out. */
  readonly forecast: ForecastLow | null;
  readonly verdict: GateVerdict;
  readonly judged: StoredReading['judged'];
}

/** Enough for a season of two thermometers, read twice a day. */
const MOST_ROWS = 500;
/** Older than this no thermometer still shows a low that was not reset (project estimate). */
const STILL_SHOWN_S = 4 * 86_400;
/** In the night it is so much warmer than its low when somebody looks, give or take as much (project estimate). */
const ABOVE_THE_LOW_K = 3;

const JUDGED = { accept: 'good', bound: 'not-reset', ask: 'open' } as const;

/** What to make of one temperature of a message. Nothing is written. */
export async function judge(reading: Reading, message: ReadingMessage, store: Records): Promise<JudgedReading> {
  const { greenhouse, greenhouseId, receivedAtS, zone } = message;
  const typed = asTyped(reading.c, message);
  const thermometer = thermometerSaid(reading.place, greenhouse);
  const night = nightOf(reading, { receivedAtS, zone, place: greenhouse.place });
  const forecast = await forecastLow(night.date, thermometer, { greenhouseId, store });
  const rows = (await store.readings(greenhouseId, MOST_ROWS)).filter((row) => keyOf(row) === (thermometer.name ?? thermometer.place));
  const sunIsUp = !nightSpan(reading.stat === 'low' ? receivedAtS : night.validAtS, greenhouse.place).isRunning;
  const asRead = { ...typed, statistic: reading.stat, sunIsUp, ...(thermometer.hangs === undefined ? {} : { hangs: thermometer.hangs }) };
  const verdict = judgeReading(asRead, expectedOf(reading, night, forecast), pastOf(rows, night));
  // Somebody who says that the sun was on it has judged already; so does a thermometer that hangs in it by day.
  const isLit = reading.stat === 'now' && (reading.sun ?? (thermometer.hangs === 'sun' && sunIsUp));
  return { tempC: reading.c, typed, statistic: reading.stat, thermometer, night, forecast, verdict, judged: isLit && verdict.reason !== 'impossible' ? 'sunlit' : JUDGED[verdict.outcome] };
}

/** By day nothing was said of any place; a high is of the day. */
function expectedOf({ stat }: Reading, { span, validAtS }: NightOfReading, forecast: ForecastLow | null): ExpectedTemp | null {
  if (forecast === null || stat === 'high') return null;
  const { meanK, scaleK } = forecast.expected;
  if (stat === 'low') return { meanK, scaleK };
  const isNight = validAtS >= span.sunsetS && validAtS <= span.sunriseS + MORNING_IN_LOWS_S;
  return isNight ? { meanK: meanK + ABOVE_THE_LOW_K, scaleK: Math.hypot(scaleK, ABOVE_THE_LOW_K) } : null;
}

/** What the same thermometer showed before; newest first. */
function pastOf(rows: readonly StoredReading[], { span }: NightOfReading): ThermometerPast {
  const settled = rows.filter(({ judged }) => judged === 'good' || judged === 'not-reset');
  const lows = settled.filter(({ statistic }) => statistic === 'low');
  const before = lows.filter(({ validAtS }) => validAtS <= span.sunsetS && validAtS > span.sunsetS - STILL_SHOWN_S).sort((a, b) => b.validAtS - a.validAtS);
  const checked = lows.filter(({ judged }) => judged === 'good').map(({ tempC }) => celsiusToKelvin(tempC));
  return {
    lowsK: before.map(({ tempC }) => celsiusToKelvin(tempC)),
    coldestK: checked.length === 0 ? null : Math.min(...checked),
    shownThatNightK: settled.filter(({ statistic, validAtS, judged }) => statistic === 'now' && judged === 'good' && validAtS >= span.sunsetS && validAtS <= span.sunriseS).map(({ tempC }) => celsiusToKelvin(tempC)),
  };
}
