import type { WeatherHours } from './weather.js';

/** One run of an ensemble, hour by hour; null where it has no value. */
export interface EnsembleMember {
  readonly airTempK: readonly (number | null)[];
  readonly cloudFraction: readonly (number | null)[];
}

/** What the members say of the errors of their forecast, hour by hour; null where too few of them say it. */
export type MemberSpread = Pick<WeatherHours, 'airTempSpreadK' | 'cloudSpread' | 'airTempCloudCorrelation'>;

/** How warm a house gets through a night hangs on the cloud of all its dark hours: so many are half a day, and most of any night. */
export const MEMBER_CLOUD_HOURS = 12;
/** Cloud is told to the percent: members that differ by less than this agree, and what goes with their differences is rounding. */
const LEAST_CLOUD_SPREAD = 0.02;

/**
 * Spread of the members' air temperature, spread of their cloud over half a day, and how the two go together.
 * Units: K and fractions in; K, fractions and a correlation out.
 * Valid: members of equal length in hourly steps; two or more of them.
 * Outside: null in hours in which fewer than `leastMembers` have all their values.
 * Source: sample standard deviation and correlation (definition).
 */
export function memberSpread(members: readonly EnsembleMember[], leastMembers: number): MemberSpread {
  const hours = members[0]?.airTempK.map((_, i) => i) ?? [];
  const halfDays = members.map(({ cloudFraction }) => hours.map((i) => meanOrNull(cloudFraction.slice(Math.max(0, i + 1 - MEMBER_CLOUD_HOURS), i + 1), MEMBER_CLOUD_HOURS)));
  const enough = <T>(rows: readonly T[]): readonly T[] | null => (rows.length >= Math.max(2, leastMembers) ? rows : null);
  const atHour = hours.map((i) => {
    const temps = enough(members.flatMap(({ airTempK }) => airTempK[i] ?? []));
    const both = enough(members.flatMap(({ airTempK }, m) => {
      const [tempK, cloud] = [airTempK[i] ?? null, halfDays[m]![i] ?? null];
      return tempK === null || cloud === null ? [] : [[tempK, cloud] as const];
    }));
    const cloud = both === null ? null : deviations(both.map(([, value]) => value));
    const temp = both === null ? null : deviations(both.map(([value]) => value));
    return { temps, cloud, temp };
  });
  return {
    airTempSpreadK: atHour.map(({ temps }) => (temps === null ? null : sdOf(deviations(temps)))),
    cloudSpread: atHour.map(({ cloud }) => (cloud === null ? null : sdOf(cloud))),
    airTempCloudCorrelation: atHour.map(({ cloud, temp }) => (cloud === null || temp === null || sdOf(cloud) < LEAST_CLOUD_SPREAD || sdOf(temp) === 0 ? null : dot(cloud, temp) / Math.sqrt(dot(cloud, cloud) * dot(temp, temp)))),
  };
}

function meanOrNull(values: readonly (number | null)[], wanted: number): number | null {
  const known = values.filter((value): value is number => value !== null);
  return known.length < wanted ? null : known.reduce((sum, value) => sum + value, 0) / wanted;
}

function deviations(values: readonly number[]): readonly number[] {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return values.map((value) => value - mean);
}

const dot = (a: readonly number[], b: readonly number[]): number => a.reduce((sum, value, i) => sum + value * b[i]!, 0);
const sdOf = (parts: readonly number[]): number => Math.sqrt(dot(parts, parts) / (parts.length - 1));
