import { humidityRatioKgPerKg, moistAirDensityKgPerM3, moistAirEnthalpyJPerKg, standardPressurePa } from '../../../engine/air/moist-air.js';
import { saturationVapourPressureHylandWexlerPa } from '../../../engine/air/saturation-hyland-wexler.js';
import { dewPointOverWaterK, frostPointK, saturationVapourPressureAtSurfacePa, vapourPressureFromDewPointOverWaterPa } from '../../../engine/air/saturation-magnus.js';
import { wetBulbK } from '../../../engine/air/wet-bulb.js';
import { celsiusToKelvin, kelvinToCelsius } from '../../../engine/units.js';
import type { PublishedRow, PublishedTable } from '../published-table.js';
import { psychrolib } from './reference-library.js';

/** PsychroLib, the reference library of ASHRAE-F17 ch. 1: rows printed from it, and the library itself over a grid. */
export const source = 'psychrolib';

const SEA_LEVEL_PA = 101_325;

/** Humidity given as psychrolib gives it: over ice below freezing. */
function fromRelativeHumidity(airTempC: number, fraction: number, printed: { W: number; dewPoint?: number; wetBulb: number; h?: number; density?: number }): PublishedRow[] {
  const e = fraction * saturationVapourPressureHylandWexlerPa(celsiusToKelvin(airTempC));
  const humidityRatio = humidityRatioKgPerKg(e, SEA_LEVEL_PA);
  const state = { airTempK: celsiusToKelvin(airTempC), humidityRatio, pressurePa: SEA_LEVEL_PA };
  const named = `${airTempC} °C, ${100 * fraction} %`;
  const rows: (PublishedRow | null)[] = [
    { name: `${named}: humidity ratio in g/kg`, expected: 1000 * printed.W, model: () => 1000 * humidityRatio },
    printed.dewPoint === undefined ? null : { name: `${named}: dew or frost point`, expected: printed.dewPoint, tolerance: 0.02, model: () => kelvinToCelsius(airTempC > 0 ? dewPointOverWaterK(e) : frostPointK(e)) },
    { name: `${named}: wet bulb`, expected: printed.wetBulb, tolerance: 0.005, model: () => kelvinToCelsius(wetBulbK(state)) },
    printed.h === undefined ? null : { name: `${named}: enthalpy in kJ/kg`, expected: printed.h / 1000, model: () => moistAirEnthalpyJPerKg(state.airTempK, humidityRatio) / 1000 },
    printed.density === undefined ? null : { name: `${named}: density`, expected: printed.density, model: () => moistAirDensityKgPerM3(state) },
  ];
  return rows.filter((row) => row !== null);
}

const wetBulbOfForecast = (airTempC: number, dewPointC: number, expected: number): PublishedRow => ({
  name: `air ${airTempC} °C, forecast dew point ${dewPointC} °C: wet bulb`,
  expected,
  tolerance: 0.005,
  model: () => kelvinToCelsius(wetBulbK({ airTempK: celsiusToKelvin(airTempC), humidityRatio: humidityRatioKgPerKg(vapourPressureFromDewPointOverWaterPa(celsiusToKelvin(dewPointC)), SEA_LEVEL_PA), pressurePa: SEA_LEVEL_PA })),
});

const density = (name: string, state: { tempC: number; fraction: number; pressurePa: number }, expected: number): PublishedRow => ({
  name,
  expected,
  model: () => {
    const airTempK = celsiusToKelvin(state.tempC);
    return moistAirDensityKgPerM3({ airTempK, humidityRatio: humidityRatioKgPerKg(state.fraction * saturationVapourPressureHylandWexlerPa(airTempK), state.pressurePa), pressurePa: state.pressurePa });
  },
});

const GRID_C = Array.from({ length: 41 }, (_, i) => -40 + 2.3 * i).filter((tempC) => tempC < 50);
const GRID_PRESSURES_PA = [70_000, 85_000, 101_325] as const;
const GRID_FRACTIONS = [0.15, 0.5, 0.95] as const;
const grid = (model: (tempC: number) => number, reference: (tempC: number) => number): PublishedRow[] =>
  GRID_C.map((tempC) => ({ name: `${tempC.toFixed(1)} °C`, expected: reference(tempC), model: () => model(tempC) }));
const moistGrid = (model: (tempC: number, humidityRatio: number, pressurePa: number) => number, reference: (tempC: number, humidityRatio: number, pressurePa: number) => number): PublishedRow[] =>
  GRID_C.flatMap((tempC) =>
    GRID_PRESSURES_PA.flatMap((pressurePa) =>
      GRID_FRACTIONS.map((fraction): PublishedRow => {
        const humidityRatio = psychrolib.GetHumRatioFromVapPres(fraction * psychrolib.GetSatVapPres(tempC), pressurePa);
        return { name: `${tempC.toFixed(1)} °C, ${fraction}, ${pressurePa} Pa`, expected: reference(tempC, humidityRatio, pressurePa), model: () => model(celsiusToKelvin(tempC), humidityRatio, pressurePa) };
      }),
    ),
  );

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'printed: Hyland-Wexler saturation', unit: 'Pa', tolerance: 1e-3, toleranceReason: 'printed to 0.001 Pa', origin: 'library run',
    rows: ([[-30, 38.016], [-10, 259.903], [-2, 517.717], [0.01, 611.657], [2, 705.954], [10, 1227.995], [20, 2338.804]] as const).map(([tempC, expected]) => ({ name: `${tempC} °C`, expected, model: () => saturationVapourPressureHylandWexlerPa(celsiusToKelvin(tempC)) })),
  },
  {
    source, title: 'printed: state from temperature and relative humidity', unit: 'as named', tolerance: 1e-3, relative: true,
    toleranceReason: '0.1 %; wet bulb 0.005 and dew point 0.02 relative (Magnus against Hyland-Wexler)', origin: 'library run',
    rows: [
      ...fromRelativeHumidity(20, 0.5, { W: 7.26174e-3, dewPoint: 9.272, wetBulb: 13.783, h: 38551.7, density: 1.1989 }),
      ...fromRelativeHumidity(10, 0.8, { W: 6.0891e-3, dewPoint: 6.713, wetBulb: 8.29, h: 25402.1, density: 1.24211 }),
      ...fromRelativeHumidity(0, 0.8, { W: 3.01562e-3, dewPoint: -2.683, wetBulb: -1.155, h: 7542.1, density: 1.28996 }),
      ...fromRelativeHumidity(-5, 0.7, { W: 1.73106e-3, dewPoint: -9.108, wetBulb: -6.335 }),
    ],
  },
  { source, title: 'printed: wet bulb of forecast dew points', unit: '°C', tolerance: 0.005, toleranceReason: 'rounded to 0.001 K', origin: 'library run', rows: [wetBulbOfForecast(-5, -8, -5.726), wetBulbOfForecast(-10, -15, -10.85)] },
  {
    source, title: 'printed: density', unit: 'kg/m3', tolerance: 1e-3, toleranceReason: 'three digits after the point', origin: 'library run',
    rows: [
      ...([[0, 1.34039], [1000, 1.1888], [2000, 1.05139]] as const).map(([elevationM, expected]) => density(`-10 °C, 80 %, ${elevationM} m`, { tempC: -10, fraction: 0.8, pressurePa: standardPressurePa(elevationM) }, expected)),
      ...([[-20, 1.39442], [-10, 1.34143], [0, 1.29232], [10, 1.24668], [20, 1.20415]] as const).map(([tempC, expected]) => ({ ...density(`dry, ${tempC} °C`, { tempC, fraction: 0, pressurePa: SEA_LEVEL_PA }, expected), tolerance: 1e-4 })),
    ],
  },
  { source, title: 'grid: Hyland-Wexler saturation', unit: 'Pa', tolerance: 1e-9, relative: true, toleranceReason: 'same equations, written apart', origin: 'library run', rows: grid((t) => saturationVapourPressureHylandWexlerPa(celsiusToKelvin(t)), (t) => psychrolib.GetSatVapPres(t)) },
  { source, title: 'grid: Magnus at a surface against Hyland-Wexler', unit: 'Pa', tolerance: 3e-3, relative: true, toleranceReason: 'stated accuracy of the Magnus form', origin: 'library run', rows: grid((t) => saturationVapourPressureAtSurfacePa(celsiusToKelvin(t)), (t) => psychrolib.GetSatVapPres(t)) },
  {
    source, title: 'grid: frost and dew point', unit: 'K', tolerance: 0.06, toleranceReason: 'the two saturation formulas differ by up to 0.3 %', origin: 'library run',
    rows: grid((t) => ((e) => (t < 0 ? frostPointK(e) : dewPointOverWaterK(e)))(psychrolib.GetSatVapPres(t)), (t) => celsiusToKelvin(psychrolib.GetTDewPointFromVapPres(t, psychrolib.GetSatVapPres(t)))),
  },
  { source, title: 'grid: density', unit: 'kg/m3', tolerance: 1e-9, relative: true, toleranceReason: 'same equation, written apart', origin: 'library run', rows: moistGrid((airTempK, humidityRatio, pressurePa) => moistAirDensityKgPerM3({ airTempK, humidityRatio, pressurePa }), (t, w, p) => psychrolib.GetMoistAirDensity(t, w, p)) },
  { source, title: 'grid: enthalpy', unit: 'J/kg', tolerance: 1e-6, toleranceReason: 'same equation, written apart', origin: 'library run', rows: moistGrid((airTempK, humidityRatio) => moistAirEnthalpyJPerKg(airTempK, humidityRatio), (t, w) => psychrolib.GetMoistAirEnthalpy(t, w)) },
  { source, title: 'grid: wet bulb', unit: 'K', tolerance: 0.002, toleranceReason: 'the library stops its search at 0.001 K', origin: 'library run', rows: moistGrid((airTempK, humidityRatio, pressurePa) => wetBulbK({ airTempK, humidityRatio, pressurePa }), (t, w, p) => celsiusToKelvin(psychrolib.GetTWetBulbFromHumRatio(t, w, p))) },
];
