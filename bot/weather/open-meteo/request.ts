import type { Place } from '../../ports.js';
import { HOURS_PER_DAY, MEMBER_CLOUD_HOURS, SECONDS_PER_DAY } from '../../../engine/index.js';
import type { WeatherHosts } from './hosts.js';
import type { WireVariableName } from './variables.js';

/** Which family of the service is asked; each has its own limits and its own outages. */
export type ServiceName = keyof WeatherHosts;

export interface ServiceRequest {
  readonly service: ServiceName;
  readonly url: string;
  /** What the service bills for it, in calls. */
  readonly weight: number;
}

/** Fifteen past days warm the model of the house up; a week ahead answers "any frost this week". */
export const FULL_PAST_HOURS = 15 * HOURS_PER_DAY;
export const AHEAD_HOURS = 7 * HOURS_PER_DAY;

/** The best match of the place first; the second fills its holes and shows how far two models are apart. */
export const FORECAST_MODELS = ['best_match', 'ecmwf_ifs'] as const;
const ENSEMBLE_MEAN_MODEL = 'ecmwf_ifs025_ensemble_mean';
const ENSEMBLE_MODEL = 'ecmwf_ifs025_ensemble';
/** Runs of the ensemble, the one that starts from the undisturbed analysis among them. */
export const ENSEMBLE_MEMBERS = 51;

const FORECAST_VARIABLES: readonly WireVariableName[] = [
  'temperature_2m', 'dew_point_2m', 'relative_humidity_2m', 'wind_speed_10m', 'wind_gusts_10m',
  'cloud_cover', 'cloud_cover_low', 'cloud_cover_mid', 'cloud_cover_high',
  'shortwave_radiation', 'direct_radiation', 'diffuse_radiation', 'surface_pressure',
  'precipitation', 'snowfall', 'soil_temperature_18cm', 'soil_temperature_54cm',
];
const SPREAD_VARIABLES: readonly WireVariableName[] = ['temperature_2m', 'temperature_2m_spread'];
export const MEMBER_VARIABLES = ['temperature_2m', 'cloud_cover'] as const satisfies readonly WireVariableName[];

// The reanalysis behind the archive is complete about five days back; a sixth is margin.
const ARCHIVE_DELAY_DAYS = 6;
const YEAR_DAYS = 365;
const COORDINATE_DECIMALS = 3;
const COLUMNS_PER_CALL = 10;
const MOST_DAYS_UNWEIGHTED = 14;

/** A coordinate as it leaves the house: about 100 m, never finer. */
export function roundedCoordinate(degrees: number): string {
  return (Math.round(degrees * 10 ** COORDINATE_DECIMALS) / 10 ** COORDINATE_DECIMALS + 0).toFixed(COORDINATE_DECIMALS);
}

/** What all three requests share. Unix time and no time zone, because the service uses one offset for a whole series, wrong across a clock change. */
function common(place: Place): URLSearchParams {
  const query = new URLSearchParams({ latitude: roundedCoordinate(place.latitude), longitude: roundedCoordinate(place.longitude) });
  if (place.elevationM !== null) query.set('elevation', String(Math.round(place.elevationM)));
  query.set('timeformat', 'unixtime');
  query.set('cell_selection', 'nearest');
  return query;
}

/** The hours of the window: past_hours alone would bring sixteen days ahead, so both are always sent. */
export interface HourSpan {
  readonly pastHours: number;
  readonly aheadHours: number;
}

export function forecastRequest(hosts: WeatherHosts, place: Place, span: HourSpan): ServiceRequest {
  const query = common(place);
  query.set('models', FORECAST_MODELS.join(','));
  query.set('wind_speed_unit', 'ms');
  query.set('past_hours', String(span.pastHours));
  query.set('forecast_hours', String(span.aheadHours));
  query.set('hourly', FORECAST_VARIABLES.join(','));
  return { service: 'forecast', url: `${hosts.forecast}/v1/forecast?${query.toString()}`, weight: weightOf(FORECAST_VARIABLES.length * FORECAST_MODELS.length) };
}

/** Mean and spread cost a tenth of a weighted call a variable, but one call at least; the members themselves cost 5.1 a variable. */
export function ensembleRequest(hosts: WeatherHosts, place: Place, span: HourSpan): ServiceRequest {
  return { service: 'ensemble', url: ensembleUrl(hosts, place, { span, model: ENSEMBLE_MEAN_MODEL, variables: SPREAD_VARIABLES }), weight: weightOf(SPREAD_VARIABLES.length) };
}

/** Half a day back for the cloud before now, and so far ahead that a run which was not renewed for a day ends before the others. */
const MEMBERS_SPAN: HourSpan = { pastHours: MEMBER_CLOUD_HOURS, aheadHours: MOST_DAYS_UNWEIGHTED * HOURS_PER_DAY };

/** The ensemble's single runs. */
export function membersRequest(hosts: WeatherHosts, place: Place): ServiceRequest {
  return { service: 'ensemble', url: ensembleUrl(hosts, place, { span: MEMBERS_SPAN, model: ENSEMBLE_MODEL, variables: MEMBER_VARIABLES }), weight: weightOf(MEMBER_VARIABLES.length * ENSEMBLE_MEMBERS) };
}

function ensembleUrl(hosts: WeatherHosts, place: Place, { span, model, variables }: { readonly span: HourSpan; readonly model: string; readonly variables: readonly string[] }): string {
  const query = common(place);
  query.set('models', model);
  query.set('wind_speed_unit', 'ms');
  query.set('past_hours', String(span.pastHours));
  query.set('forecast_hours', String(span.aheadHours));
  query.set('hourly', variables.join(','));
  return `${hosts.ensemble}/v1/ensemble?${query.toString()}`;
}

/** The air temperature of the last full year that the archive holds. */
export function yearRequest(hosts: WeatherHosts, place: Place, nowS: number): ServiceRequest {
  const lastDayS = nowS - ARCHIVE_DELAY_DAYS * SECONDS_PER_DAY;
  const query = common(place);
  query.set('start_date', dayOf(lastDayS - (YEAR_DAYS - 1) * SECONDS_PER_DAY));
  query.set('end_date', dayOf(lastDayS));
  query.set('hourly', 'temperature_2m');
  return { service: 'archive', url: `${hosts.archive}/v1/archive?${query.toString()}`, weight: weightOf(1, YEAR_DAYS) };
}

/** The service's own arithmetic: a tenth of a call for each column, more for more than a fortnight, one call at least. */
const weightOf = (columns: number, days = 0): number => Math.max(1, (columns / COLUMNS_PER_CALL) * Math.max(1, days / MOST_DAYS_UNWEIGHTED));

const dayOf = (timeS: number): string => new Date(timeS * 1000).toISOString().slice(0, 'YYYY-MM-DD'.length);
