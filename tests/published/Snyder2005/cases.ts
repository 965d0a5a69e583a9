import { celsiusToKelvin, fahrenheitToCelsius, kelvinToCelsius, celsiusToFahrenheit, SECONDS_PER_HOUR } from '../../../engine/units.js';
import { fitFrostNights, frostNightLowK } from '../../../engine/learn/frost-night-regression.js';
import { frostNightTrendK } from '../../../engine/learn/frost-night-trend.js';
import { runSoil } from '../Carslaw1959/soil-run.js';
import { once } from '../rc-network.js';
import type { PublishedRow, PublishedTable } from '../published-table.js';

/**
 * Snyder and de Melo-Abreu 2005, FAO frost manual vol. 1 ch. 5: ten radiation-frost nights with air temperature and dew point two hours after
 * sunset and the low; the rule fitted to them in two steps; the trend through a night. Data and example as printed in the documentation of a
 * public implementation; a second trend, in °F, as an example of UC Davis. The last table asks the engine's soil for the same shape.
 */
export const source = 'Snyder2005';

const AIR_C = [3.2, 0.8, 0.2, 2.6, 4.4, 5.2, 2.7, 1.2, 4.5, 5.6] as const;
const DEW_POINT_C = [-4.2, -8.8, -6.5, -6.2, -6.1, 2.6, -0.7, -1.7, -1.2, 0.1] as const;
const LOW_C = [-3.1, -5, -6.3, -5.4, -4, -2.5, -4.8, -5, -4.4, -3.3] as const;

const site = once(() => fitFrostNights(AIR_C.map((airC, i) => ({ eveningAirTempK: celsiusToKelvin(airC), eveningDewPointK: celsiusToKelvin(DEW_POINT_C[i]!), lowK: celsiusToKelvin(LOW_C[i]!) }))));
const lowC = (airC: number, dewPointC: number): number => kelvinToCelsius(frostNightLowK(site(), { eveningAirTempK: celsiusToKelvin(airC), eveningDewPointK: celsiusToKelvin(dewPointC) }));

const NIGHT = { startTempK: celsiusToKelvin(0.95), lowK: celsiusToKelvin(-5.45), nightHours: 15 };
const TREND_C = [[3, -0.825], [4, -1.56], [6, -2.6], [8, -3.398], [10, -4.071], [12, -4.663], [15, -5.45]] as const;
const DAVIS = { startTempK: celsiusToKelvin(fahrenheitToCelsius(33.7)), lowK: celsiusToKelvin(fahrenheitToCelsius(22.2)), nightHours: 15 };

/** Share of the fall of a soil surface under a steady loss, from two hours after sunset to the end of the night, moist loam. */
const soilFall = once((): ReadonlyMap<number, number> => {
  const start = celsiusToKelvin(10);
  const surface = new Map<number, number>();
  runSoil({ conductivityWPerMK: 1.2, heatCapacityJPerM3K: 2.3e6, startK: start, surface: { kind: 'flux', outOfSoilWPerM2: 40 } }, 13 * SECONDS_PER_HOUR, (timeS, profile) => surface.set(timeS / SECONDS_PER_HOUR, start - profile.atDepthK(0)));
  return surface;
});
const soilTrendC = (hours: number): number => 0.95 - 6.4 * (soilFall().get(hours - 2)! / soilFall().get(13)!);

const row = (name: string, expected: number, model: () => number): PublishedRow => ({ name, expected, model });

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'ch. 5, ten nights: rule in two steps', unit: '°C', tolerance: 1e-4, toleranceReason: 'rounded to five digits', origin: 'published',
    rows: [
      row('10 °C and dew point 2 °C', -0.7409219, () => lowC(10, 2)),
      row('both 0 °C', -5.82199, () => lowC(0, 0)),
      row('for each K of air', 0.50281, () => lowC(1, 0) - lowC(0, 0)),
      row('for each K of dew point', 0.02647, () => lowC(0, 1) - lowC(0, 0)),
    ],
  },
  { source, title: 'ch. 5, trend from 0.95 to -5.45 °C in a night of 15 h', unit: '°C', tolerance: 1e-3, toleranceReason: 'printed to three digits', origin: 'published', rows: TREND_C.map(([hours, expected]) => row(`${hours} h after sunset`, expected, () => kelvinToCelsius(frostNightTrendK(NIGHT, hours)))) },
  {
    source, title: 'trend of UC Davis, 33.7 to 22.2 °F in 15 h', unit: '°F', tolerance: 6e-3, toleranceReason: 'printed to two digits', origin: 'published',
    rows: ([[3, 30.51], [6, 27.32], [10, 24.68], [15, 22.2]] as const).map(([hours, expected]) => row(`${hours} h after sunset`, expected, () => celsiusToFahrenheit(kelvinToCelsius(frostNightTrendK(DAVIS, hours))))),
  },
  {
    source, title: "the trend beside the engine's soil under a steady loss of heat", unit: '°C', tolerance: 0.32, toleranceReason: '5 % of the fall of 6.4 K, acceptance of the soil grid', origin: 'published',
    rows: TREND_C.map(([hours, expected]) => row(`${hours} h after sunset`, expected, () => soilTrendC(hours))),
  },
];
