/** One year of hourly weather, as a CSV file with a head line has it; 24 hours a day, standard time, no leap day. */
export interface WeatherYear {
  /** At the end of each hour. */
  readonly dryBulbC: Float64Array;
  readonly dewPointC: Float64Array;
  readonly pressurePa: Float64Array;
  readonly windMPerS: Float64Array;
  readonly cloudFraction: Float64Array;
  /** Means of the hour that ends. */
  readonly globalWPerM2: Float64Array;
  readonly beamNormalWPerM2: Float64Array;
  readonly diffuseWPerM2: Float64Array;
}

export const HOURS_PER_YEAR = 8760;
const DAYS_PER_MONTH: readonly number[] = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
/** Clouds that let the sky through hardly warm it: the opaque share counts. */
const COLUMNS = { dryBulbC: 'dry_bulb_c', dewPointC: 'dew_point_c', pressurePa: 'pressure_pa', windMPerS: 'wind_ms', cloudTenths: 'opaque_sky_tenths', globalWPerM2: 'ghi_wm2', beamNormalWPerM2: 'dni_wm2', diffuseWPerM2: 'dhi_wm2' } as const;
/** What a cell may hold; anything beyond is a mark for a missing value or another unit. */
const RANGES: Readonly<Record<keyof typeof COLUMNS, readonly [number, number]>> = {
  dryBulbC: [-60, 60], dewPointC: [-60, 40], pressurePa: [50_000, 110_000], windMPerS: [0, 40], cloudTenths: [0, 10], globalWPerM2: [0, 1500], beamNormalWPerM2: [0, 1500], diffuseWPerM2: [0, 1500],
};
const TENTHS = 10;
/** Of a file, after its head line. */
const FIRST_LINE = 2;

export interface HourOfYear {
  readonly month: number;
  readonly day: number;
  /** 1 to 24. */
  readonly hourEnd: number;
}

export function hourOfYear(index: number): HourOfYear {
  let day = Math.floor(index / 24);
  let month = 0;
  for (; day >= DAYS_PER_MONTH[month]!; month += 1) day -= DAYS_PER_MONTH[month]!;
  return { month: month + 1, day: day + 1, hourEnd: (index % 24) + 1 };
}

/** Index of the first hour of a day written as "02-09", or null. */
export function firstHourOf(day: string): number | null {
  const written = /^(\d{2})-(\d{2})$/u.exec(day);
  if (!written) return null;
  const [month, date] = [Number(written[1]), Number(written[2])];
  if (month < 1 || month > 12 || date < 1 || date > DAYS_PER_MONTH[month - 1]!) return null;
  return 24 * (DAYS_PER_MONTH.slice(0, month - 1).reduce((sum, days) => sum + days, 0) + date - 1);
}

/** The cells of a CSV text by the names of its columns. */
export function csvColumns(text: string): ReadonlyMap<string, readonly string[]> {
  const [head, ...lines] = text.trim().split(/\r?\n/u).map((line) => line.split(','));
  return new Map(head!.map((name, column) => [name.trim(), lines.map((cells) => cells[column] ?? '')]));
}

/** The year of a file by its columns; throws with line, column and expectation. */
export function readWeatherYear(columns: ReadonlyMap<string, readonly string[]>): WeatherYear {
  const column = (name: string): readonly string[] => {
    const cells = columns.get(name);
    if (!cells) throw new Error(`weather: no column ${name}; expected a CSV file with a head line that names month, day, hour_end, ${Object.values(COLUMNS).join(', ')}`);
    return cells;
  };
  const stamps = ['month', 'day', 'hour_end'].map(column);
  const hours = stamps[0]!.length;
  if (hours !== HOURS_PER_YEAR) throw new Error(`weather: ${hours} hours; expected the ${HOURS_PER_YEAR} of a whole year without leap day`);
  for (let i = 0; i < hours; i += 1) {
    const { month, day, hourEnd } = hourOfYear(i);
    const found = stamps.map((cells) => Number(cells[i]));
    if (found[0] !== month || found[1] !== day || found[2] !== hourEnd) throw new Error(`weather line ${i + FIRST_LINE}: month, day, hour_end are ${found.join(', ')}; expected ${month}, ${day}, ${hourEnd}`);
  }
  const series = (key: keyof typeof COLUMNS): Float64Array => {
    const [lowest, highest] = RANGES[key];
    return Float64Array.from(column(COLUMNS[key]), (text, i) => {
      const cell = text.trim();
      const value = cell === '' ? Number.NaN : Number(cell);
      if (!(value >= lowest && value <= highest)) throw new Error(`weather line ${i + FIRST_LINE}: ${COLUMNS[key]} is ${JSON.stringify(cell)}; expected ${lowest} to ${highest}`);
      return value;
    });
  };
  return {
    dryBulbC: series('dryBulbC'),
    dewPointC: series('dewPointC'),
    pressurePa: series('pressurePa'),
    windMPerS: series('windMPerS'),
    cloudFraction: series('cloudTenths').map((tenths) => tenths / TENTHS),
    globalWPerM2: series('globalWPerM2'),
    beamNormalWPerM2: series('beamNormalWPerM2'),
    diffuseWPerM2: series('diffuseWPerM2'),
  };
}
