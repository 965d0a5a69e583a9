import { z } from 'zod';
import { SECONDS_PER_HOUR } from '../../../engine/index.js';
import { AnswerRefusedError } from './errors.js';
import { modelsOf, withoutMember } from './models.js';
import { WIRE_VARIABLES, type WireVariableName } from './variables.js';

/** One place's answer, checked: the units are ours, the hours are equal steps, the columns are as long as the hours. */
export interface WireAnswer {
  readonly latitude: number;
  readonly longitude: number;
  readonly elevationM: number | null;
  readonly timeS: readonly number[];
  /** By the name on the wire. A column that the service does not have for the place is left out. */
  readonly columns: ReadonlyMap<string, readonly (number | null)[]>;
  /** Suffixes of the models, the preferred first; one empty suffix when one model answered. */
  readonly models: readonly string[];
}

const ErrorBody = z.object({ error: z.literal(true), reason: z.string() });
const Head = z.object({ hourly_units: z.record(z.string(), z.string()), hourly: z.record(z.string(), z.unknown()) });
const Series = z.array(z.number().nullable());
const Answer = z.object({
  latitude: z.number().min(-90).max(90),
  longitude: z.number().min(-180).max(180),
  elevation: z.number().optional(),
  utc_offset_seconds: z.int(),
  hourly: z.object({ time: z.array(z.int()).min(1) }).catchall(Series),
});

const ASK_AGAIN = 'Ask the service with timeformat=unixtime, wind_speed_unit=ms, no other unit parameters, no timezone, one place.';

/**
 * Checks an answer of the service (already parsed JSON) against what we ask for.
 * Throws AnswerRefusedError; nothing is converted or guessed.
 */
export function readWireAnswer(body: unknown): WireAnswer {
  const error = ErrorBody.safeParse(body);
  if (error.success) {
    throw new AnswerRefusedError('Weather answer', { expected: 'hourly weather', got: `the service's error "${error.data.reason}"`, todo: 'Correct the request or try again later.' });
  }
  if (Array.isArray(body)) {
    throw new AnswerRefusedError('Weather answer', { expected: 'one place (a JSON object)', got: `an array of ${body.length} places`, todo: 'Ask for one place, or save one element of the array.' });
  }
  const head = Head.safeParse(body);
  if (!head.success) {
    throw new AnswerRefusedError('Weather answer', { expected: 'a forecast answer with "hourly" and "hourly_units"', got: describe(body), todo: ASK_AGAIN });
  }
  checkUnits(head.data.hourly_units);
  const answer = Answer.safeParse(body);
  if (!answer.success) {
    const issue = answer.error.issues[0];
    throw new AnswerRefusedError(`Weather answer, ${issue?.path.join('.') ?? ''}`, { expected: 'the format of the service', got: issue?.message ?? 'something else', todo: ASK_AGAIN });
  }
  const { latitude, longitude, elevation, utc_offset_seconds: offsetS, hourly } = answer.data;
  const { time, ...series } = hourly;
  checkTimes(time, offsetS);
  const columns = new Map<string, readonly (number | null)[]>();
  for (const [name, values] of Object.entries(series)) {
    if (values.length !== time.length) {
      throw new AnswerRefusedError(`Weather answer, hourly.${name}`, { expected: `${time.length} values, one for each hour`, got: `${values.length}`, todo: 'The answer is damaged; ask again.' });
    }
    // A column without a unit, or with the unit "undefined", is one that the service does not have here.
    const unit = head.data.hourly_units[name];
    if (unit !== undefined && unit !== 'undefined') columns.set(name, values);
  }
  return { latitude, longitude, elevationM: elevation ?? null, timeS: time, columns, models: modelsOf(Object.keys(series)) };
}

/** A column's name on the wire: the model's suffix is left out where only one answers. */
const columnName = (variable: string, suffix: string): string => (suffix === '' ? variable : `${variable}_${suffix}`);

function checkUnits(units: Readonly<Record<string, string>>): void {
  if (units['time'] !== 'unixtime') {
    throw new AnswerRefusedError('Weather answer, unit of hourly.time', { expected: '"unixtime" (epoch seconds)', got: `"${units['time'] ?? 'nothing'}"`, todo: ASK_AGAIN });
  }
  const variables = Object.keys(WIRE_VARIABLES) as WireVariableName[];
  const expected = new Map<string, string>(modelsOf(Object.keys(units)).flatMap((suffix) => variables.map((variable) => [columnName(variable, suffix), WIRE_VARIABLES[variable].unit])));
  for (const [name, unit] of Object.entries(units)) {
    const right = expected.get(withoutMember(name));
    if (right === undefined || unit === 'undefined' || unit === right) continue;
    throw new AnswerRefusedError(`Weather answer, unit of hourly.${name}`, { expected: `"${right}"`, got: `"${unit}"`, todo: ASK_AGAIN });
  }
}

function checkTimes(timeS: readonly number[], offsetS: number): void {
  // With unix time a whole-hour offset changes nothing; with any other the service labels the hours wrongly.
  if (offsetS % SECONDS_PER_HOUR !== 0) {
    throw new AnswerRefusedError('Weather answer, utc_offset_seconds', { expected: '0', got: `${offsetS} s, for which the service labels its hours wrongly`, todo: ASK_AGAIN });
  }
  for (const [i, t] of timeS.entries()) {
    const previous = timeS[i - 1];
    if (t % SECONDS_PER_HOUR === 0 && (previous === undefined || t - previous === SECONDS_PER_HOUR)) continue;
    const got = previous === undefined ? `${t}, not on the hour` : `${t} after ${previous}`;
    throw new AnswerRefusedError(`Weather answer, hourly.time[${i}]`, { expected: 'full hours in steps of 3600 s', got, todo: 'Ask for hourly values of one time span.' });
  }
}

function describe(body: unknown): string {
  if (typeof body !== 'object' || body === null) return `JSON that is ${body === null ? 'null' : `a ${typeof body}`}`;
  return `an object with ${Object.keys(body).slice(0, 6).join(', ') || 'nothing in it'}`;
}
