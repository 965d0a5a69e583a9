import { HOURS_PER_YEAR, hourOfYear } from './weather-year.js';

const HEAD = 'month,day,hour_end,dry_bulb_c,dew_point_c,pressure_pa,wind_ms,opaque_sky_tenths,ghi_wm2,dni_wm2,dhi_wm2';

/** A year in which every hour is alike: saturated air under full cloud, whose sky is as warm as the air, and no sun. */
export function evenYearCsv(tempC: number): string {
  const lines = Array.from({ length: HOURS_PER_YEAR }, (_, i) => {
    const { month, day, hourEnd } = hourOfYear(i);
    return `${month},${day},${hourEnd},${tempC},${tempC},100000,3,10,0,0,0`;
  });
  return `${[HEAD, ...lines].join('\n')}\n`;
}
