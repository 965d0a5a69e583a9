import { celsiusToKelvin, saturationVapourPressureOverWaterPa, vapourPressureFromDewPointOverWaterPa } from '../../../engine/index.js';
import { preferred, withShortGapsClosed, type Column } from './columns.js';
import { AnswerRefusedError, WHOLE_ANSWER } from './errors.js';
import type { WireAnswer } from './wire.js';

const PERCENT = 100;

/** Vapour pressure (Pa) from the dew point, or where that is missing from the humidity; both over liquid water, as the service means them. */
export function vapourPressure(answer: WireAnswer, temperatureC: Column): { readonly column: Column; readonly fromHumidityHours: number } {
  const dewPointC = preferred(answer, 'dew_point_2m');
  const humidityPercent = preferred(answer, 'relative_humidity_2m');
  if (dewPointC === null && humidityPercent === null) {
    throw new AnswerRefusedError('Weather answer, hourly.dew_point_2m and relative_humidity_2m', { expected: 'values in one of them', got: 'none that can be true', todo: WHOLE_ANSWER });
  }
  let fromHumidityHours = 0;
  const fromSecond = [...(dewPointC?.fromSecond ?? [])];
  const values = answer.timeS.map((_, i) => {
    const dew = dewPointC?.values[i] ?? null;
    if (dew !== null) return vapourPressureFromDewPointOverWaterPa(celsiusToKelvin(dew));
    const humidity = humidityPercent?.values[i] ?? null;
    const tempC = temperatureC.values[i] ?? null;
    if (humidity === null || tempC === null) return null;
    fromHumidityHours += 1;
    if (humidityPercent?.fromSecond.includes(i) === true) fromSecond.push(i);
    return (humidity / PERCENT) * saturationVapourPressureOverWaterPa(celsiusToKelvin(tempC));
  });
  return { column: withShortGapsClosed({ values, fromSecond, interpolated: [] }), fromHumidityHours };
}
