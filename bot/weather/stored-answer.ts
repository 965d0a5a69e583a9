import { z } from 'zod';
import { SECONDS_PER_HOUR } from '../../engine/index.js';
import type { WeatherAnswer } from '../ports.js';

const Numbers = z.array(z.number());
const NumbersOrNull = z.array(z.number().nullable());

const Hours = z
  .object({
    timeS: Numbers.min(1).refine((timeS) => timeS.every((t, i) => i === 0 || t - (timeS[i - 1] ?? 0) === SECONDS_PER_HOUR)),
    airTempK: Numbers,
    vapourPressurePa: Numbers,
    windSpeed10mMPerS: Numbers,
    cloudFraction: Numbers,
    globalShortwaveWPerM2: Numbers,
    diffuseShortwaveWPerM2: Numbers,
    surfacePressurePa: Numbers,
    snowfallM: Numbers,
    airTempSpreadK: NumbersOrNull,
    // Rows of versions that knew no members of the ensemble are without.
    cloudSpread: NumbersOrNull.optional(),
    airTempCloudCorrelation: NumbersOrNull.optional(),
    modelDifferenceK: NumbersOrNull,
  })
  .transform((hours) => {
    const unknown = hours.timeS.map(() => null);
    return { ...hours, cloudSpread: hours.cloudSpread ?? unknown, airTempCloudCorrelation: hours.airTempCloudCorrelation ?? unknown };
  })
  .refine((hours) => Object.values(hours).every((column) => column.length === hours.timeS.length));

const Note = z.discriminatedUnion('code', [
  z.object({ code: z.literal('second-service'), failure: z.enum(['network', 'time-out', 'cut-off', 'not-json', 'server', 'refused', 'limited', 'resting', 'unusable']), cause: z.string() }),
  z.object({ code: z.literal('coarse-steps'), startsAtS: z.number(), stepHours: z.number() }),
  z.object({ code: z.literal('stale'), ageS: z.number(), cause: z.string() }),
  z.object({ code: z.literal('short-horizon'), endsAtS: z.number() }),
  z.object({ code: z.literal('short-history'), startsAtS: z.number() }),
  z.object({ code: z.literal('filled-gap'), variable: z.string(), hours: z.number() }),
  z.object({ code: z.literal('second-model-used'), variable: z.string() }),
  z.object({ code: z.literal('missing-variable'), variable: z.string(), instead: z.string() }),
  z.object({ code: z.literal('no-ensemble'), cause: z.string() }),
  z.object({ code: z.literal('no-members'), cause: z.string() }),
  z.object({ code: z.literal('invented-demo') }),
]);

const Answer = z.object({
  hours: Hours,
  ground: z.object({ soilTemp18cmK: z.number().nullable(), soilTemp54cmK: z.number().nullable(), yearlyMeanAirTempK: z.number().nullable() }),
  source: z.string(),
  issuedAtS: z.number(),
  stale: z.boolean(),
  notes: z.array(Note),
});

/** The answer in a stored row; null when the row is not one (a damaged file, a version that cannot be read). */
export function parseStoredAnswer(body: string): WeatherAnswer | null {
  let json: unknown;
  try {
    json = JSON.parse(body);
  } catch {
    return null;
  }
  const answer = Answer.safeParse(json);
  return answer.success ? answer.data : null;
}
