import { celsiusToKelvin } from '../../../engine/index.js';
import type { Clock, Place } from '../../ports.js';
import { degreesApart } from '../distance.js';
import type { ServiceClient } from './client.js';
import { hoursOfMembers, hoursOfSpread, withoutEnsemble, type EnsembleHours } from './ensemble.js';
import { AnswerRefusedError, ServiceCallError, type CallFailure } from './errors.js';
import type { WeatherHosts } from './hosts.js';
import { FORECAST_MODELS, ensembleRequest, forecastRequest, membersRequest, yearRequest, type HourSpan } from './request.js';
import { toHours, type HoursAndNotes } from './to-hours.js';
import { plausible } from './variables.js';
import { readWireAnswer, type WireAnswer } from './wire.js';

/** Asks for the weather of one place; yearlyMeanAirTempK when it is already known and need not be asked again. */
export type AskWeather = (place: Place, wanted: { readonly span: HourSpan; readonly yearlyMeanAirTempK: number | null }) => Promise<HoursAndNotes>;

// A grid cell is at most 25 km wide; half a degree away is another place.
const FARTHEST_CELL_DEGREES = 0.5;
// A mean over less than this share of the year would lean to a season.
const LEAST_SHARE_OF_YEAR = 0.9;

export interface OpenMeteo {
  readonly client: ServiceClient;
  readonly hosts: WeatherHosts;
  readonly clock: Clock;
  /** Ask for the single runs of the ensemble, which cost about ten times what their mean and spread do: no request costs less than one call. */
  readonly wantsMembers: boolean;
}

/**
 * The three requests that make one answer. The forecast must come; the ensemble and the past year may be missing and are then noted.
 * Throws ServiceCallError or AnswerRefusedError.
 */
export function askOpenMeteo(service: OpenMeteo): AskWeather {
  const { client, hosts, clock } = service;
  return async (place, { span, yearlyMeanAirTempK }) => {
    const forecast = atPlace(readWireAnswer(await client.getJson(forecastRequest(hosts, place, span))), place);
    const ensemble = await ensembleOf(service, place, span);
    const year = yearlyMeanAirTempK ?? (await orCause(async () => yearlyMean(readWireAnswer(await client.getJson(yearRequest(hosts, place, clock.nowS()))))));
    return toHours(forecast, {
      place,
      nowS: clock.nowS(),
      modelsAsked: FORECAST_MODELS.length,
      ensemble,
      yearlyMeanAirTempK: typeof year === 'number' ? year : null,
    });
  };
}

/** The single runs where they are wanted and can be had; else their mean and spread, and that is noted; else nothing. */
async function ensembleOf(service: OpenMeteo, place: Place, span: HourSpan): Promise<EnsembleHours> {
  const members = service.wantsMembers ? await membersOr(service, place) : null;
  if (members !== null && 'byTimeS' in members) return members;
  if (members?.isUnreachable === true) return withoutEnsemble(members.cause);
  const spread = await orCause(async () => hoursOfSpread(atPlace(readWireAnswer(await service.client.getJson(ensembleRequest(service.hosts, place, span))), place)));
  if ('cause' in spread) return withoutEnsemble(spread.cause);
  return members === null || spread.byTimeS.size === 0 ? spread : { ...spread, notes: [{ code: 'no-members', cause: members.cause }, ...spread.notes] };
}

/** After these a second question would fare as the first. */
const UNREACHABLE: ReadonlySet<CallFailure> = new Set<CallFailure>(['network', 'time-out', 'server', 'limited', 'resting']);

async function membersOr({ client, hosts }: OpenMeteo, place: Place): Promise<EnsembleHours | { readonly cause: string; readonly isUnreachable: boolean }> {
  const request = membersRequest(hosts, place);
  if (!client.hasRoomFor(request)) return { cause: 'the limits of the service leave no room for more now', isUnreachable: false };
  try {
    const hours = hoursOfMembers(atPlace(readWireAnswer(await client.getJson(request)), place));
    return 'cause' in hours ? { ...hours, isUnreachable: false } : hours;
  } catch (error) {
    if (error instanceof AnswerRefusedError) return { cause: error.message, isUnreachable: false };
    if (error instanceof ServiceCallError) return { cause: error.message, isUnreachable: UNREACHABLE.has(error.kind) };
    throw error;
  }
}

async function orCause<T>(ask: () => Promise<T>): Promise<T | { readonly cause: string }> {
  try {
    return await ask();
  } catch (error) {
    if (error instanceof ServiceCallError || error instanceof AnswerRefusedError) return { cause: error.message };
    throw error;
  }
}

function atPlace(answer: WireAnswer, place: Place): WireAnswer {
  const offDegrees = degreesApart(answer, place);
  if (offDegrees <= FARTHEST_CELL_DEGREES) return answer;
  throw new AnswerRefusedError('Weather answer, place', {
    expected: `within ${FARTHEST_CELL_DEGREES} degrees of ${place.latitude}, ${place.longitude}`,
    got: `${answer.latitude}, ${answer.longitude}`,
    todo: 'Ask again; if it stays so, something between changes the request.',
  });
}

function yearlyMean(answer: WireAnswer): number {
  const temperatures = (answer.columns.get('temperature_2m') ?? []).map((value) => plausible('temperature_2m', value)).filter((value) => value !== null);
  if (temperatures.length < LEAST_SHARE_OF_YEAR * answer.timeS.length || temperatures.length === 0) {
    throw new AnswerRefusedError('Weather of the past year', { expected: `values in ${LEAST_SHARE_OF_YEAR * 100} % of the hours`, got: `${temperatures.length} of ${answer.timeS.length}`, todo: 'It is asked again with the next forecast.' });
  }
  return celsiusToKelvin(temperatures.reduce((sum, value) => sum + value, 0) / temperatures.length);
}
