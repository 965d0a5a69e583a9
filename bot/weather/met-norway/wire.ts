import { z } from 'zod';
import { SECONDS_PER_HOUR } from '../../../engine/index.js';
import { AnswerRefusedError } from '../open-meteo/errors.js';
import { INSTANT_VARIABLES, PERIOD_VARIABLES, plausibleMet, type InstantName, type MetVariable, type PeriodName } from './variables.js';

/** One step of the forecast: values at its instant, and of the periods that FOLLOW it. */
export interface MetStep {
  readonly timeS: number;
  readonly instant: Readonly<Record<InstantName, number | null>>;
  readonly nextHour: Readonly<Record<PeriodName, number | null>>;
  readonly nextSixHours: Readonly<Record<PeriodName, number | null>>;
}

/** The answer of the second service, checked: its units are those we know, its steps are full hours in order. */
export interface MetNorwayAnswer {
  readonly latitude: number;
  readonly longitude: number;
  readonly altitudeM: number | null;
  /** When the forecast itself was last made anew. */
  readonly updatedAtS: number;
  readonly steps: readonly MetStep[];
}

const Details = z.record(z.string(), z.unknown());
const Period = z.object({ details: Details.optional() }).optional();
const Answer = z.object({
  type: z.literal('Feature'),
  geometry: z.object({ coordinates: z.tuple([z.number().min(-180).max(180), z.number().min(-90).max(90)], z.number()) }),
  properties: z.object({
    meta: z.object({ updated_at: z.iso.datetime(), units: z.record(z.string(), z.string()) }),
    timeseries: z
      .array(z.object({ time: z.iso.datetime(), data: z.object({ instant: z.object({ details: Details }), next_1_hours: Period, next_6_hours: Period }) }))
      .min(1),
  }),
});

const NOT_OURS = 'Check DUSKWARD_WEATHER2_URL; the service may have changed its format.';

/** Checks an answer of the second service (already parsed JSON). Throws AnswerRefusedError; nothing is converted or guessed. */
export function readMetNorwayAnswer(body: unknown): MetNorwayAnswer {
  const parsed = Answer.safeParse(body);
  if (!parsed.success) {
    const issue = parsed.error.issues[0];
    const where = issue === undefined || issue.path.length === 0 ? '' : `, ${issue.path.join('.')}`;
    throw new AnswerRefusedError(`Second weather answer${where}`, { expected: 'the format of Locationforecast 2.0', got: issue?.message ?? 'something else', todo: NOT_OURS });
  }
  const { geometry, properties } = parsed.data;
  const { meta, timeseries } = properties;
  checkUnits(meta.units);
  const [longitude, latitude, altitudeM] = geometry.coordinates;
  const steps = timeseries.map(({ time, data }): MetStep => ({
    timeS: Date.parse(time) / 1000,
    instant: valuesOf(INSTANT_VARIABLES, data.instant.details),
    nextHour: valuesOf(PERIOD_VARIABLES, data.next_1_hours?.details ?? {}),
    nextSixHours: valuesOf(PERIOD_VARIABLES, data.next_6_hours?.details ?? {}),
  }));
  checkTimes(steps);
  return { latitude, longitude, altitudeM: altitudeM ?? null, updatedAtS: Date.parse(meta.updated_at) / 1000, steps };
}

function valuesOf<Name extends string>(variables: Readonly<Record<Name, MetVariable>>, details: Readonly<Record<string, unknown>>): Record<Name, number | null> {
  const names = Object.keys(variables) as Name[];
  return Object.fromEntries(names.map((name) => [name, plausibleMet(variables[name], details[name])])) as Record<Name, number | null>;
}

/** A unit that is told must be ours. Only the temperature's must be told: the version of the service fixes the others. */
function checkUnits(units: Readonly<Record<string, string>>): void {
  const variables: Readonly<Record<string, MetVariable>> = { ...INSTANT_VARIABLES, ...PERIOD_VARIABLES };
  for (const [name, { unit: expected }] of Object.entries(variables)) {
    const unit = units[name] ?? (name === 'air_temperature' ? 'nothing' : expected);
    if (unit === expected) continue;
    throw new AnswerRefusedError(`Second weather answer, unit of ${name}`, { expected: `"${expected}"`, got: `"${unit}"`, todo: NOT_OURS });
  }
}

function checkTimes(steps: readonly MetStep[]): void {
  for (const [i, { timeS }] of steps.entries()) {
    const previousS = steps[i - 1]?.timeS ?? Number.NEGATIVE_INFINITY;
    if (timeS % SECONDS_PER_HOUR === 0 && timeS > previousS) continue;
    throw new AnswerRefusedError(`Second weather answer, time of step ${i}`, { expected: 'full hours in order', got: new Date(timeS * 1000).toISOString(), todo: 'The answer is damaged; ask again.' });
  }
}
