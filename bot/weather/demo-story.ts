/**
 * The INVENTED days of the demo, and the smooth curves through them. Nothing here is a forecast of any real place or time.
 * Hours are local solar hours of the story: 0 is midnight at the start of day 0, the day of the clear cold night.
 */

interface Day {
  /** High in the early afternoon (°C). */
  readonly highC: number;
  /** Cloud cover (0-1) by day, and in the night that follows. */
  readonly dayCloud: number;
  readonly nightCloud: number;
  /** Wind at 10 m (m/s) by day, and in the night that follows. */
  readonly dayWindMPerS: number;
  readonly nightWindMPerS: number;
  readonly snowfallCm: number;
}

const day = (highC: number, clouds: readonly [number, number], windsMPerS: readonly [number, number], snowfallCm = 0): Day => ({
  highC, dayCloud: clouds[0], nightCloud: clouds[1], dayWindMPerS: windsMPerS[0], nightWindMPerS: windsMPerS[1], snowfallCm,
});

const FIRST_DAY = -17;
const DAYS: readonly Day[] = [
  day(9, [0.9, 0.95], [4, 3.5]), // -17
  day(8, [1, 0.9], [5, 4]),
  day(9, [0.5, 0.8], [4, 3]),
  day(8, [0.7, 0.9], [3.5, 3]),
  day(6, [0.3, 0.1], [3, 1.8]), // -13: first frost in the night
  day(6, [0.2, 0.85], [2.5, 3]),
  day(8, [1, 1], [4.5, 4.5]),
  day(9, [0.95, 0.9], [5, 4]), // -10
  day(7, [0.6, 0.6], [4, 3]),
  day(6, [0.4, 0.75], [3.5, 2.5]),
  day(5, [0.85, 0.95], [3, 3]),
  day(4, [0.15, 0.05], [2.5, 1.6]), // -6: second frost in the night
  day(5, [0.25, 0.7], [2.5, 2.5]),
  day(7, [0.9, 1], [4, 4]),
  day(6, [1, 0.95], [5, 4.5]), // -3
  day(4, [0.8, 0.7], [5, 4]),
  day(3, [0.6, 0.9], [5, 5]), // -1: the wind turns north
  day(2.5, [0.03, 0.02], [2, 0.8]), // 0: TONIGHT, clear and calm
  day(1, [0.2, 0.6], [2, 2]),
  day(2, [0.9, 0.95], [3, 3]),
  day(0.5, [1, 1], [3.5, 3], 5), // 3: a little snow
  day(-1, [0.5, 0.5], [3, 2]),
  day(0, [0.3, 0.6], [3, 2.5]),
  day(3, [0.8, 0.9], [4, 3.5]),
  day(4, [0.9, 0.8], [4, 3]),
  day(4, [0.5, 0.6], [3, 2.5]), // 8
];

const HOURS_PER_DAY = 24;
// Local solar hours between which the temperature swings.
const COLDEST_HOUR = 7;
const WARMEST_HOUR = 14.5;
// Snow and rain fall between these.
const WET_HOURS = { from: 9, to: 17 } as const;
const RAIN_MM_PER_HOUR = 0.4;
// The service's own ratio: 7 cm of new snow are 10 mm of water.
const SNOW_CM_PER_WATER_MM = 0.7;

/** The weather at one hour of the story. */
export interface DemoHour {
  readonly airTempC: number;
  readonly dewPointC: number;
  readonly cloudFraction: number;
  readonly windSpeed10mMPerS: number;
  readonly snowfallCm: number;
  readonly precipitationMm: number;
}

export function demoHour(storyHour: number): DemoHour {
  const tempC = airTempC(storyHour);
  const cloudFraction = dayAndNight(storyHour, (i) => dayAt(i).dayCloud, (i) => dayAt(i).nightCloud);
  const dewC = dayAndNight(storyHour, (i) => dewPointC(i, dayAt(i).dayCloud), (i) => dewPointC(i, dayAt(i).nightCloud));
  const { snowfallCm, dayCloud, highC } = dayAt(Math.floor(storyHour / HOURS_PER_DAY));
  const hour = storyHour - Math.floor(storyHour / HOURS_PER_DAY) * HOURS_PER_DAY;
  const wet = hour > WET_HOURS.from && hour <= WET_HOURS.to;
  const snowCm = wet ? snowfallCm / (WET_HOURS.to - WET_HOURS.from) : 0;
  const rainMm = wet && snowfallCm === 0 && dayCloud >= 0.95 && highC > 3 ? RAIN_MM_PER_HOUR : 0;
  return {
    airTempC: tempC,
    dewPointC: Math.min(dewC, tempC - 0.4),
    cloudFraction,
    windSpeed10mMPerS: dayAndNight(storyHour, (i) => dayAt(i).dayWindMPerS, (i) => dayAt(i).nightWindMPerS),
    snowfallCm: snowCm,
    precipitationMm: snowCm / SNOW_CM_PER_WATER_MM + rainMm,
  };
}

/** Beyond the table the first and the last day repeat. */
function dayAt(index: number): Day {
  const found = DAYS[Math.min(DAYS.length - 1, Math.max(0, index - FIRST_DAY))];
  if (found === undefined) throw new Error(`demo weather: expected a whole number of days, got ${index}. Report this as a defect.`);
  return found;
}

/** Low in the night after a day: a clear calm night loses some 11 K from the high, a cloudy windy one 3 K. */
function lowAfterC(index: number): number {
  const { highC, nightCloud, nightWindMPerS } = dayAt(index);
  return highC - 2.5 - 11.2 * (1 - nightCloud) * Math.exp(-nightWindMPerS / 4);
}

/** Clear air is dry air: the dew point lies below the coming low, the more the fewer clouds. */
const dewPointC = (index: number, cloudFraction: number): number => lowAfterC(index) - 0.5 - 2 * (1 - cloudFraction);

/** From 0 to 1 without a corner at either end. */
const eased = (share: number): number => (1 - Math.cos(Math.PI * Math.min(1, Math.max(0, share)))) / 2;
const between = (from: number, to: number, share: number): number => from + (to - from) * share;

function airTempC(storyHour: number): number {
  const index = Math.floor((storyHour - COLDEST_HOUR) / HOURS_PER_DAY);
  const hour = storyHour - index * HOURS_PER_DAY;
  if (hour <= WARMEST_HOUR) return between(lowAfterC(index - 1), dayAt(index).highC, eased((hour - COLDEST_HOUR) / (WARMEST_HOUR - COLDEST_HOUR)));
  // Fast in the evening, slow towards morning.
  const nightShare = ((hour - WARMEST_HOUR) / (COLDEST_HOUR + HOURS_PER_DAY - WARMEST_HOUR)) ** 0.75;
  return between(dayAt(index).highC, lowAfterC(index), eased(nightShare));
}

/** A value that is one thing at 13 h and another at 1 h of the night that follows. */
function dayAndNight(storyHour: number, byDay: (index: number) => number, byNight: (index: number) => number): number {
  const index = Math.floor((storyHour - 1) / HOURS_PER_DAY);
  const hour = storyHour - index * HOURS_PER_DAY - 1;
  const half = HOURS_PER_DAY / 2;
  return hour <= half ? between(byNight(index - 1), byDay(index), eased(hour / half)) : between(byDay(index), byNight(index), eased((hour - half) / half));
}
