import { describe, expect, it } from 'vitest';
import { celsiusToKelvin, kelvinToCelsius, nextSunriseS, standardPressurePa } from '../../../engine/index.js';
import { metNorwayHours, type MetNorwayHours } from '../../../bot/weather/met-norway/to-hours.js';
import { readMetNorwayAnswer } from '../../../bot/weather/met-norway/wire.js';
import { eachInstant, isoOf, metNorwayBody, type MetBody, type MetTimestep } from '../../fixtures/met-norway-answer.js';
import { forecastBody } from '../../fixtures/weather-answer.js';

const HOUR_S = 3600;
const NOW_S = Date.parse('2026-11-23T21:20:30Z') / 1000;
const HOUR_NOW_S = Date.parse('2026-11-23T21:00:00Z') / 1000;
const PLACE = { latitude: 44.26, longitude: -72.58, elevationM: 187 };

const body = (hourlyHours = 57): MetBody => metNorwayBody(forecastBody({ nowS: NOW_S }), { nowS: NOW_S, hourlyHours });
const hoursOf = (answer: unknown, nowS = NOW_S, elevationM: number | null = PLACE.elevationM): MetNorwayHours => metNorwayHours(readMetNorwayAnswer(answer), { place: { ...PLACE, elevationM }, nowS });
const stepAt = (answer: MetBody, timeS: number): MetTimestep => {
  const step = answer.properties.timeseries.find(({ time }) => time === isoOf(timeS));
  if (step === undefined) throw new Error(`expected a step at ${isoOf(timeS)}, got none`);
  return step;
};
const at = ({ hours }: MetNorwayHours, timeS: number): number => hours.timeS.indexOf(timeS);

describe('hourly steps', () => {
  it('become the engine\'s hours as they are: no hour lost, none made up', () => {
    const answer = body();
    const { hours, notes } = hoursOf(answer);
    expect(hours.timeS[0]).toBe(HOUR_NOW_S);
    expect(hours.timeS.every((t, i) => i === 0 || t - (hours.timeS[i - 1] ?? 0) === HOUR_S)).toBe(true);
    for (let i = 0; i <= 57; i += 1) {
      const { details } = stepAt(answer, HOUR_NOW_S + i * HOUR_S).data.instant;
      expect(hours.airTempK[i]).toBe(celsiusToKelvin(details['air_temperature'] ?? Number.NaN));
      expect(hours.windSpeed10mMPerS[i]).toBe(details['wind_speed']);
      expect(hours.cloudFraction[i]).toBe((details['cloud_area_fraction'] ?? Number.NaN) / 100);
    }
    // -5 degrees C dew point over liquid water: 421.8 Pa (over ice it would be 401.9)
    expect(hours.vapourPressurePa[0]).toBeCloseTo(421.8, 0);
    expect(hours.modelDifferenceK.every((difference) => difference === null)).toBe(true);
    expect(notes.map(({ code }) => code)).toEqual(['coarse-steps', 'no-ensemble']);
    expect(notes[0]).toEqual({ code: 'coarse-steps', startsAtS: HOUR_NOW_S + 57 * HOUR_S, stepHours: 6 });
  });

  it('take the vapour from the humidity where the dew point is missing, over liquid water', () => {
    const { hours } = hoursOf(eachInstant(eachInstant(eachInstant(body(), 'dew_point_temperature', () => undefined), 'relative_humidity', () => 50), 'air_temperature', () => 0));
    // Saturation over water at 0 degrees C: 611.2 Pa (WMO-No8 Annex 4.B).
    expect(hours.vapourPressurePa[3]).toBeCloseTo(305.6, 1);
  });

  it('never hold more vapour than saturation', () => {
    const { hours } = hoursOf(eachInstant(eachInstant(body(), 'air_temperature', () => 0), 'dew_point_temperature', () => 0.4));
    for (const pa of hours.vapourPressurePa.slice(0, 57)) expect(pa).toBeCloseTo(611.2, 6);
  });

  it('give the spread of the ensemble from its outer tenths', () => {
    const wide = eachInstant(eachInstant(body(), 'air_temperature_percentile_10', () => -4), 'air_temperature_percentile_90', () => 4);
    const { hours, notes } = hoursOf(wide);
    // Standard normal: the 10 % and 90 % quantiles are 2.5631 standard deviations apart.
    for (const spread of hours.airTempSpreadK) expect(spread).toBeCloseTo(8 / 2.5631, 4);
    expect(notes.map(({ code }) => code)).toEqual(['coarse-steps']);
    const crossed = hoursOf(eachInstant(wide, 'air_temperature_percentile_10', () => 5));
    expect(crossed.hours.airTempSpreadK.every((spread) => spread === null)).toBe(true);
  });

  it('bridge what one step lacks, and say so', () => {
    const answer = body();
    delete stepAt(answer, HOUR_NOW_S + 5 * HOUR_S).data.instant.details['wind_speed'];
    const before = stepAt(answer, HOUR_NOW_S + 4 * HOUR_S).data.instant.details;
    before['wind_speed'] = 1;
    stepAt(answer, HOUR_NOW_S + 6 * HOUR_S).data.instant.details['wind_speed'] = 4;
    const { hours, notes } = hoursOf(answer);
    expect(hours.windSpeed10mMPerS[5]).toBe(2.5);
    expect(notes).toContainEqual({ code: 'filled-gap', variable: 'wind_speed_10m', hours: 1 });
  });

  it('that begin with the coming hour stand for the present one too, and say so', () => {
    const answer = body();
    answer.properties.timeseries.shift();
    const { hours, notes } = hoursOf(answer);
    expect(hours.timeS[0]).toBe(HOUR_NOW_S);
    expect(hours.airTempK[0]).toBe(hours.airTempK[1]);
    expect(notes[0]).toEqual({ code: 'filled-gap', variable: 'the present hour', hours: 1 });
    answer.properties.timeseries.shift();
    expect(() => hoursOf(answer)).toThrow(/time span: expected hours around 2026-11-23T21:20Z, got 2026-11-23T23:00Z/);
  });
});

describe('precipitation', () => {
  const wetHour = (answer: MetBody, hour: number, amounts: { hour?: number; six?: number }): void => {
    const { data } = stepAt(answer, HOUR_NOW_S + hour * HOUR_S);
    if (amounts.hour !== undefined && data.next_1_hours) data.next_1_hours.details['precipitation_amount'] = amounts.hour;
    if (amounts.six !== undefined && data.next_6_hours) data.next_6_hours.details['precipitation_amount'] = amounts.six;
  };
  const dry = (answer: MetBody): MetBody => {
    answer.properties.timeseries.forEach((_, hour) => {
      if (hour <= 57) wetHour(answer, hour, { hour: 0, six: 0 });
    });
    return answer;
  };

  it('of the hour that follows a step falls in the hour that ends an hour after it: 10 mm of water are 7 cm of snow', () => {
    const answer = dry(eachInstant(eachInstant(body(), 'air_temperature', () => -5), 'dew_point_temperature', () => -6));
    wetHour(answer, 7, { hour: 10 });
    const { hours } = hoursOf(answer);
    expect(hours.snowfallM[8]).toBeCloseTo(0.07, 9);
    expect(hours.snowfallM.slice(0, 58).filter((depth) => depth > 0)).toHaveLength(1);
  });

  it('of six hours is spread over them, and nothing is lost', () => {
    const answer = dry(eachInstant(eachInstant(body(), 'air_temperature', () => -5), 'dew_point_temperature', () => -6));
    const coarse = answer.properties.timeseries.filter(({ data }) => data.next_1_hours === undefined && data.next_6_hours !== undefined);
    coarse.forEach(({ data }, i) => {
      if (data.next_6_hours) data.next_6_hours.details['precipitation_amount'] = i === 0 ? 6 : 0;
    });
    const hours = hoursOf(answer);
    const start = at(hours, Date.parse(coarse[0]?.time ?? '') / 1000);
    for (let k = 1; k <= 6; k += 1) expect(hours.hours.snowfallM[start + k]).toBeCloseTo(0.007, 9);
    expect(hours.hours.snowfallM.reduce((sum, depth) => sum + depth, 0)).toBeCloseTo(0.042, 9);
  });

  it.each([
    { what: 'is snow in air at freezing', airC: -0.5, dewC: -0.5, snow: [1, 1] },
    // Dry air at 3 degrees C with a dew point of -10 has a wet bulb of about -1.6: flakes reach the ground.
    { what: 'is snow above freezing in dry air', airC: 3, dewC: -10, snow: [1, 1] },
    { what: 'is part snow in damp air just above freezing', airC: 1, dewC: 1, snow: [0.45, 0.55] },
    { what: 'is rain in damp air at 3 degrees', airC: 3, dewC: 3, snow: [0, 0] },
    { what: 'is rain in summer', airC: 30, dewC: 5, snow: [0, 0] },
  ])('$what', ({ airC, dewC, snow: [least, most] }) => {
    const answer = dry(eachInstant(eachInstant(body(), 'air_temperature', () => airC), 'dew_point_temperature', () => dewC));
    wetHour(answer, 2, { hour: 1 });
    const share = (hoursOf(answer).hours.snowfallM[3] ?? Number.NaN) / 0.007;
    expect(share).toBeGreaterThanOrEqual((least ?? 0) - 1e-9);
    expect(share).toBeLessThanOrEqual((most ?? 0) + 1e-9);
  });
});

describe('pressure', () => {
  it('of the standard atmosphere at sea level is that of the standard atmosphere at the height', () => {
    for (const elevationM of [0, 187, 1650, 3000]) {
      const standard = eachInstant(eachInstant(eachInstant(body(), 'air_temperature', () => 15 - 0.0065 * elevationM), 'dew_point_temperature', () => -20), 'air_pressure_at_sea_level', () => 1013.25);
      // Within 3 Pa in 70 000: the printed exponents differ in the last digit.
      expect(Math.abs((hoursOf(standard, NOW_S, elevationM).hours.surfacePressurePa[3] ?? 0) - standardPressurePa(elevationM))).toBeLessThan(3);
    }
  });

  it('falls faster with height in cold air', () => {
    const pressure = (airC: number): number => hoursOf(eachInstant(eachInstant(body(), 'air_temperature', () => airC), 'dew_point_temperature', () => -45)).hours.surfacePressurePa[3] ?? 0;
    expect(pressure(-30)).toBeLessThan(pressure(20));
  });

  it('is that of the service\'s height where ours is not known, and the standard one where it is not told', () => {
    const answer = body();
    expect(hoursOf(answer, NOW_S, null).hours.surfacePressurePa[0]).toBeCloseTo(hoursOf(answer, NOW_S, 200).hours.surfacePressurePa[0] ?? 0, 6);
    const untold = hoursOf(eachInstant(answer, 'air_pressure_at_sea_level', () => undefined));
    expect(untold.hours.surfacePressurePa[0]).toBeCloseTo(standardPressurePa(187), 6);
    expect(untold.notes).toContainEqual({ code: 'missing-variable', variable: 'surface_pressure', instead: 'standard atmosphere at 187 m' });
  });
});

describe('sunlight', () => {
  it('is none at night, a quarter under a closed sky, and never less than its diffuse part', () => {
    const clear = hoursOf(eachInstant(body(), 'cloud_area_fraction', () => 0));
    const closed = hoursOf(eachInstant(body(), 'cloud_area_fraction', () => 100));
    const noon = at(clear, Date.parse('2026-11-24T17:00:00Z') / 1000);
    // Haurwitz at noon on 24 November at 44.26 N: height 25.2 degrees, 1098 sin h exp(-0.059 / sin h) = 407 W/m2.
    expect(clear.hours.globalShortwaveWPerM2[noon]).toBeGreaterThan(390);
    expect(clear.hours.globalShortwaveWPerM2[noon]).toBeLessThan(415);
    expect((closed.hours.globalShortwaveWPerM2[noon] ?? 0) / (clear.hours.globalShortwaveWPerM2[noon] ?? 1)).toBeCloseTo(0.25, 9);
    expect(clear.hours.globalShortwaveWPerM2[at(clear, Date.parse('2026-11-24T05:00:00Z') / 1000)]).toBe(0);
    for (const { hours } of [clear, closed]) expect(hours.diffuseShortwaveWPerM2.every((diffuse, i) => diffuse >= 0 && diffuse <= (hours.globalShortwaveWPerM2[i] ?? 0))).toBe(true);
  });
});

describe('six-hourly steps', () => {
  /** A night whose low lies between two steps: 06 and 12 UTC are 1 and 7 in the morning by the sun, sunrise is at 12 UTC less some. */
  const coarse = (change: (details: Record<string, number>, timeS: number) => void = () => undefined): { answer: MetBody; fromS: number } => {
    const answer = body(20);
    const fromS = Date.parse('2026-11-25T06:00:00Z') / 1000;
    const step = stepAt(answer, fromS);
    if (step.data.next_6_hours === undefined) throw new Error('expected a coarse step with the six hours after it, got none');
    change(step.data.next_6_hours.details, fromS);
    return { answer, fromS };
  };
  const tempsC = (answer: MetBody, fromS: number): number[] => {
    const hours = hoursOf(answer);
    return hours.hours.airTempK.slice(at(hours, fromS), at(hours, fromS) + 7).map(kelvinToCelsius);
  };

  it('keep the low of the night that a straight line would lose, at sunrise', () => {
    const { answer, fromS } = coarse((details) => {
      details['air_temperature_min'] = -14.5;
    });
    const between = tempsC(answer, fromS);
    expect(Math.min(...between)).toBeCloseTo(-14.5, 9);
    const sunriseS = nextSunriseS(fromS, PLACE) ?? Number.NaN;
    expect(Math.abs(fromS + between.indexOf(Math.min(...between)) * HOUR_S - sunriseS)).toBeLessThanOrEqual(HOUR_S);
  });

  it('keep both a low and a high of the same six hours, and never go beyond them', () => {
    const { answer, fromS } = coarse((details) => {
      details['air_temperature_min'] = -14.5;
      details['air_temperature_max'] = 9.5;
    });
    const between = tempsC(answer, fromS);
    expect(Math.min(...between)).toBeCloseTo(-14.5, 9);
    expect(Math.max(...between)).toBeCloseTo(9.5, 9);
  });

  it('go straight where the low and the high are those of the ends, or not told', () => {
    const { answer, fromS } = coarse((details) => {
      delete details['air_temperature_min'];
      delete details['air_temperature_max'];
    });
    const between = tempsC(answer, fromS);
    const [first, last] = [between[0] ?? Number.NaN, between[6] ?? Number.NaN];
    between.forEach((tempC, k) => expect(tempC).toBeCloseTo(first + ((last - first) * k) / 6, 9));
  });

  it('keep every low and high of a week of them: made weather with a low at 8 UTC each day', () => {
    const made = hoursOf(body(20));
    const full = forecastBody({ nowS: NOW_S });
    const truthK = (full.hourly['temperature_2m_best_match'] ?? []).map((tempC) => celsiusToKelvin(tempC ?? Number.NaN));
    const nights = [1, 2, 3, 4, 5].map((day) => HOUR_NOW_S + day * 24 * HOUR_S);
    for (const eveningS of nights) {
      const lowOf = (times: readonly number[], temps: readonly number[]): number => Math.min(...times.flatMap((t, i) => (t >= eveningS && t <= eveningS + 18 * HOUR_S ? [temps[i] ?? Number.NaN] : [])));
      expect(Math.abs(lowOf(made.hours.timeS, made.hours.airTempK) - lowOf(full.hourly['time']?.map(Number) ?? [], truthK))).toBeLessThanOrEqual(0.05);
    }
  });

  it('end the series where a step is missing', () => {
    const { answer } = coarse();
    answer.properties.timeseries = answer.properties.timeseries.filter(({ time }) => time !== '2026-11-26T12:00:00Z');
    expect(hoursOf(answer).hours.timeS.at(-1)).toBe(Date.parse('2026-11-26T06:00:00Z') / 1000);
  });
});
