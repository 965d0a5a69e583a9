import { celsiusToKelvin, type ExpectedTemp } from '../../../engine/index.js';
import type { Records, StoredAction } from '../../ports.js';
import type { Advisory, AdvisoryPlace } from '../evening/advisory.js';
import type { Thermometer } from './thermometer.js';

/** What was said of a place before its night. */
export interface ForecastLow {
  /** As it stood in the message. */
  readonly lowC: number;
  readonly expected: ExpectedTemp;
}

/** Half of the 80 % range of Student-t with four degrees of freedom, in scales. */
const TENTH_OF_T4 = 1.533;
/** A garden thermometer (project estimate, as the learning has it). */
const THERMOMETER_K = 0.4;

/** The forecast for the thermometer's place on a night; null where none went out. */
export async function forecastLow(night: string, { place, bed }: Pick<Thermometer, 'place' | 'bed'>, { greenhouseId, store }: { greenhouseId: string; store: Records }): Promise<ForecastLow | null> {
  const stored = await store.advisoryFor(greenhouseId, night);
  if (stored === null) return null;
  const advisory = JSON.parse(stored.body) as Advisory;
  const nothing = advisory.alternatives.find(({ actions }) => actions.length === 0)?.places ?? advisory.places;
  const of = (places: readonly AdvisoryPlace[]): Low | null => lowOf(places.filter((one) => one.place === place && (bed === undefined || one.bed === bed)));
  const told = toldOf((await store.actions(greenhouseId, stored.issuedAtS - DAY_S)).filter((action) => action.night === night));
  const [planned, left] = [of(advisory.places), of(nothing)];
  if (planned === null || left === null) return null;
  const said = told === 'left' ? left : planned;
  // Whether the work was done is not known where nothing was told: both may be.
  const apartK = told === null ? Math.abs(planned.lowC - left.lowC) / 2 : 0;
  const centreC = told === null ? (planned.lowC + left.lowC) / 2 : said.lowC;
  return { lowC: said.lowC, expected: { meanK: celsiusToKelvin(centreC), scaleK: Math.hypot(said.halfRangeK / TENTH_OF_T4, THERMOMETER_K, apartK) } };
}

const DAY_S = 86_400;

interface Low {
  readonly lowC: number;
  readonly halfRangeK: number;
}

/** One place, or the middle of all beds that have it. */
function lowOf(places: readonly AdvisoryPlace[]): Low | null {
  if (places.length === 0) return null;
  const mean = (of: (place: AdvisoryPlace) => number): number => places.reduce((sum, place) => sum + of(place), 0) / places.length;
  return { lowC: mean(({ lowC }) => lowC.q50), halfRangeK: mean(({ lowC }) => (lowC.q90 - lowC.q10) / 2) };
}

/** Whether the grower said of the night's work that it was done or left; null where nothing was said, or both. */
function toldOf(actions: readonly StoredAction[]): 'done' | 'left' | null {
  const kinds = new Set(actions.map(({ done }) => done));
  return kinds.size !== 1 ? null : kinds.has(true) ? 'done' : 'left';
}
