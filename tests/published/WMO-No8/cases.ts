import {
  dewPointOverWaterK,
  frostPointK,
  saturationVapourPressureOverIcePa,
  saturationVapourPressureOverWaterPa,
  vapourPressureFromDewPointOverWaterPa,
} from '../../../engine/air/saturation-magnus.js';
import { celsiusToKelvin, kelvinToCelsius } from '../../../engine/units.js';
import { outsideJson } from '../outside-data.js';
import type { PublishedRow, PublishedTable } from '../published-table.js';

/** WMO-No. 8 (CIMO guide) annex 4.B: the two Magnus forms (coefficients from memory) evaluated apart from this code. */
export const source = 'WMO-No8';

const overWater = (tempC: number): number => saturationVapourPressureOverWaterPa(celsiusToKelvin(tempC));
const overIce = (tempC: number): number => saturationVapourPressureOverIcePa(celsiusToKelvin(tempC));
const pairs = (values: readonly (readonly [number, number])[], model: (tempC: number) => number): PublishedRow[] => values.map(([tempC, expected]) => ({ name: `${tempC} °C`, expected, model: () => model(tempC) }));

/** The trap: a forecast's dew point below 0 °C is over liquid water, so its vapour pressure is higher than a frost point of the same figure. */
const fromForecast = (airTempC: number, dewPointC: number, expected: { e: number; liquid: number; ice: number }): PublishedRow[] => {
  const e = (): number => vapourPressureFromDewPointOverWaterPa(celsiusToKelvin(dewPointC));
  return [
    { name: `dew point ${dewPointC} °C: vapour pressure in hPa`, expected: expected.e / 100, model: () => e() / 100 },
    { name: `dew point ${dewPointC} °C, air ${airTempC} °C: relative humidity over liquid`, expected: expected.liquid, model: () => e() / overWater(airTempC) },
    { name: `dew point ${dewPointC} °C, air ${airTempC} °C: relative humidity over ice`, expected: expected.ice, model: () => e() / overIce(airTempC) },
  ];
};

const seventyPercentOverLiquidPa = (): number => 0.7 * overWater(-5);

interface OutsidePoints {
  readonly cases: { readonly psychrometrics_wmo: { readonly points: readonly { t_c: number; es_water_hpa: number; es_ice_hpa: number | null }[] } };
}
const outside = outsideJson('analytic/closed-form-cases.json') as OutsidePoints | null;

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'annex 4.B: saturation over water', unit: 'Pa', tolerance: 0.01, toleranceReason: 'same formula, rounded to 0.001 Pa', origin: 'from memory',
    rows: pairs([[-20, 125.965], [-10, 287.031], [-5, 422.185], [0, 611.2], [5, 871.743], [10, 1226.03], [20, 2332.596]], overWater),
  },
  {
    source, title: 'annex 4.B: saturation over ice', unit: 'Pa', tolerance: 0.01, toleranceReason: 'same formula, rounded to 0.001 Pa', origin: 'from memory',
    rows: pairs([[-30, 38.025], [-20, 103.261], [-10, 259.874], [-5, 401.738], [-2, 517.72]], overIce),
  },
  {
    source, title: 'annex 4.B: frost point of a liquid dew point', unit: '°C', tolerance: 0.01, toleranceReason: 'rounded to 0.001 K', origin: 'from memory',
    rows: pairs([[-2, -1.763], [-5, -4.418], [-10, -8.876], [-15, -13.373], [-20, -17.911], [-30, -27.112]], (dewPointC) => kelvinToCelsius(frostPointK(overWater(dewPointC)))),
  },
  {
    source, title: 'annex 4.B: forecast dew points below freezing', unit: 'as named', tolerance: 0.005, toleranceReason: 'rounded to four digits', origin: 'from memory',
    rows: [...fromForecast(-5, -8, { e: 335.59, liquid: 0.7949, ice: 0.8353 }), ...fromForecast(-10, -15, { e: 191.87, liquid: 0.6685, ice: 0.7382 })],
  },
  {
    source, title: 'annex 4.B: -5 °C and 70 % over liquid', unit: 'as named', tolerance: 0.01, toleranceReason: 'rounded to 0.001 K and 0.01 Pa', origin: 'from memory',
    rows: [
      { name: 'vapour pressure, Pa', expected: 295.53, model: seventyPercentOverLiquidPa },
      { name: 'dew point, °C', expected: -9.629, model: () => kelvinToCelsius(dewPointOverWaterK(seventyPercentOverLiquidPa())) },
      { name: 'frost point, °C', expected: -8.544, model: () => kelvinToCelsius(frostPointK(seventyPercentOverLiquidPa())) },
      { name: 'relative humidity over ice', expected: 0.7356, model: () => seventyPercentOverLiquidPa() / overIce(-5) },
    ],
  },
  {
    source, title: 'closed-form set: both phases', unit: 'hPa', tolerance: 1e-9, toleranceReason: 'double precision', origin: 'from memory',
    ...(outside ? {} : { absent: 'closed-form cases computed from WMO-No. 8 annex 4.B' }),
    rows: (outside?.cases.psychrometrics_wmo.points ?? []).flatMap((point): PublishedRow[] => [
      { name: `${point.t_c} °C over water`, expected: point.es_water_hpa, model: () => overWater(point.t_c) / 100 },
      ...(point.es_ice_hpa === null ? [] : [{ name: `${point.t_c} °C over ice`, expected: point.es_ice_hpa, model: () => overIce(point.t_c) / 100 }]),
    ]),
  },
];
