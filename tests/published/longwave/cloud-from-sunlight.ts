import { sunPosition } from '../../../engine/sun/position.js';
import { degreesToRadians, SECONDS_PER_HOUR } from '../../../engine/units.js';
import type { SunPlace } from '../sun-rows.js';
import type { MeasuredSky } from './measured-sky.js';

// Haurwitz1945 (from memory).
const HAURWITZ_W_PER_M2 = 1098;
const HAURWITZ_EXTINCTION = 0.059;
const SAMPLES_AN_HOUR = 6;
/** Lower suns are hidden by slopes and trees, and say little of the cloud. */
const LEAST_SINE = Math.sin(degreesToRadians(15));
/** The clear sky of a site is where its brightest hours lie, as in the set of scores. */
const CLEAR_PERCENTILE = 0.93;

/** Mean sine of the sun's height over the hour that ends at an instant. */
function meanSine(hourEndS: number, place: SunPlace): number {
  let sum = 0;
  for (let k = 0; k < SAMPLES_AN_HOUR; k += 1) sum += Math.max(0, Math.sin(sunPosition(hourEndS - SECONDS_PER_HOUR + ((k + 0.5) * SECONDS_PER_HOUR) / SAMPLES_AN_HOUR, place).altitudeRad));
  return sum / SAMPLES_AN_HOUR;
}

function percentile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  const position = share * (sorted.length - 1);
  const low = Math.floor(position);
  return sorted[low]! + (position - low) * ((sorted[low + 1] ?? sorted[low]!) - sorted[low]!);
}

/**
 * Cloud of every hour from its sunlight: what is missing to the clear sky of the site; through the night straight from the last good hour
 * of the day to the first of the next. That is what a careful user without a forecast would have. Hours in a row, each ending at its stamp.
 */
export function withCloudFromSunlight(hours: readonly MeasuredSky[], place: SunPlace): readonly MeasuredSky[] {
  const sines = hours.map(({ timeS }) => meanSine(timeS, place));
  const clearWPerM2 = (sine: number): number => HAURWITZ_W_PER_M2 * sine * Math.exp(-HAURWITZ_EXTINCTION / sine);
  const known = hours.flatMap((hour, i) => (sines[i]! > LEAST_SINE ? [{ i, share: hour.sunWPerM2 / clearWPerM2(sines[i]!) }] : []));
  const ofSite = percentile(known.map(({ share }) => share), CLEAR_PERCENTILE);
  const cloudOf = (share: number): number => Math.min(1, Math.max(0, 1 - share / ofSite));
  let next = 0;
  return hours.map((hour, i) => {
    while (next < known.length && known[next]!.i < i) next += 1;
    const [before, after] = [known[Math.max(0, next - 1)]!, known[Math.min(next, known.length - 1)]!];
    const share = after.i === before.i ? 0 : Math.min(1, Math.max(0, (i - before.i) / (after.i - before.i)));
    const cloudFraction = cloudOf(before.share) + share * (cloudOf(after.share) - cloudOf(before.share));
    return { ...hour, cloudFraction, kind: sines[i]! > LEAST_SINE ? 'day' : sines[i] === 0 ? 'night' : 'low sun' };
  });
}
