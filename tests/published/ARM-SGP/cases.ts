import { measuredSky } from '../longwave/measured-sky.js';
import { enginesSky, scoreSky } from '../longwave/sky-score.js';
import type { PublishedTable } from '../published-table.js';

/**
 * ARM Southern Great Plains, site E13, Oklahoma, 1 January 2019, every ten minutes (ARM-DOE/arm-test-data): a fully overcast day between
 * -5.6 and 1.3 °C. Assumed: cloud 1 all day. One of the sets that the engine's sky was fitted to.
 */
export const source = 'ARM-SGP';

const all = measuredSky('arm-sgp-e13-ok-2019-01-01-10min.csv');
/** The day, with full cloud. */
export const OVERCAST_DAY = (all ?? []).map((sky) => ({ ...sky, cloudFraction: 1 }));

export const tables: readonly PublishedTable[] = [
  {
    source, title: "the engine's own sky, overcast day", unit: 'W/m2', tolerance: 15, toleranceReason: 'a single day; the plain linear rule reads 14 too warm', origin: 'measured',
    ...(all ? {} : { absent: 'ARM-DOE/arm-test-data (ARM SGP E13)' }),
    rows: all ? [{ name: `bias of ${OVERCAST_DAY.length} readings`, expected: 0, model: () => scoreSky(enginesSky, OVERCAST_DAY).bias }] : [],
  },
];
