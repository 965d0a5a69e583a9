import { humidityRatioKgPerKg } from '../../../engine/air/moist-air.js';
import { saturationVapourPressureAtSurfacePa, saturationVapourPressureOverWaterPa } from '../../../engine/air/saturation-magnus.js';
import { DRY_AIR_HEAT_CAPACITY_J_PER_KGK, FUSION_HEAT_J_PER_KG, STANDARD_PRESSURE_PA, VAPORISATION_HEAT_J_PER_KG, WATER_DENSITY_KG_PER_M3 } from '../../../engine/constants.js';
import { naturalConvectionWPerM2K, VERTICAL_W_PER_M2K43 } from '../../../engine/cover/convection.js';
import { celsiusToKelvin, SECONDS_PER_DAY, SECONDS_PER_HOUR, ZERO_CELSIUS_K } from '../../../engine/units.js';
import { runSoil } from '../Carslaw1959/soil-run.js';
import { absentUnlessClosedForms, closedForms } from '../closed-form-set.js';
import type { PublishedRow, PublishedTable } from '../published-table.js';
import { once } from '../rc-network.js';

/** Worked examples of Incropera and DeWitt (from memory): a glass fire screen, and how deep to bury a water main; dew on film by the Lewis relation (sec. 6.7), evaluated apart from this code. */
export const source = 'Incropera2007';

const SIXTY_DAYS_S = 60 * SECONDS_PER_DAY;
/** Depth of 0 °C under a surface held at -15 °C, soil of 20 °C. */
const frostDepthM = once(() => {
  const profile = runSoil({ conductivityWPerMK: 0.52, heatCapacityJPerM3K: 2050 * 1840, startK: celsiusToKelvin(20), surface: { kind: 'held', tempK: () => celsiusToKelvin(-15) }, stepS: SECONDS_PER_HOUR }, SIXTY_DAYS_S);
  let [thawed, frozen] = [1.5, 0];
  while (thawed - frozen > 1e-3) {
    const middle = (thawed + frozen) / 2;
    if (profile.atDepthK(middle) > ZERO_CELSIUS_K) thawed = middle;
    else frozen = middle;
  }
  return thawed;
});

/** Frost by the latent heat given up, capacity next to nothing, as Stefan's law has it. */
const stefanDepthM = (soil: { conductivityWPerMK: number; waterFraction: number }, surfaceC: number, days: number): number => {
  const stepS = SECONDS_PER_HOUR;
  let heatJPerM2 = 0;
  runSoil({ ...soil, heatCapacityJPerM3K: 1e4, startK: ZERO_CELSIUS_K, surface: { kind: 'held', tempK: () => celsiusToKelvin(surfaceC) }, stepS }, days * SECONDS_PER_DAY, (_, profile) => (heatJPerM2 += profile.heatOutWPerM2 * stepS));
  return heatJPerM2 / (soil.waterFraction * WATER_DENSITY_KG_PER_M3 * FUSION_HEAT_J_PER_KG);
};

/** Air over a colder film: humidity ratios, vapour taken up, its heat. */
function dewRows(name: string, state: { airC: number; humidity: number; filmC: number }, printed: { latent: number; perHour: number; air?: number; film?: number }): PublishedRow[] {
  const H = 2.5;
  const air = (): number => humidityRatioKgPerKg(state.humidity * saturationVapourPressureOverWaterPa(celsiusToKelvin(state.airC)), STANDARD_PRESSURE_PA);
  const film = (): number => humidityRatioKgPerKg(saturationVapourPressureAtSurfacePa(celsiusToKelvin(state.filmC)), STANDARD_PRESSURE_PA);
  const fluxKgPerM2S = (): number => (H / DRY_AIR_HEAT_CAPACITY_J_PER_KGK) * (air() - film());
  const row = (what: string, expected: number | undefined, model: () => number): PublishedRow[] => (expected === undefined ? [] : [{ name: `${name}: ${what}`, expected, model }]);
  return [
    ...row('air, g/kg', printed.air, () => 1000 * air()),
    ...row('saturated at the film, g/kg', printed.film, () => 1000 * film()),
    ...row('latent heat, W/m2', printed.latent, () => fluxKgPerM2S() * VAPORISATION_HEAT_J_PER_KG),
    ...row('water, g/(m2 h)', printed.perHour, () => fluxKgPerM2S() * SECONDS_PER_HOUR * 1000),
  ];
}

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'example 9.2: glass fire screen, 232 in 23 °C', unit: 'W/(m2 K)', tolerance: 0.15, relative: true, toleranceReason: 'the cube-root law of rooms, taken to 209 K', origin: 'from memory',
    rows: [{ name: 'convection', expected: 7, model: () => naturalConvectionWPerM2K(209, VERTICAL_W_PER_M2K43) }],
  },
  {
    source, title: 'example on burying a water main: 60 days at -15 °C', unit: 'm', tolerance: 0.09, toleranceReason: 'the column ends at 1.5 m, where it is held at 20 °C while the endless solid has come down to 13: two months are not what it is for', origin: 'from memory',
    rows: [{ name: 'depth of 0 °C', expected: 0.68, model: frostDepthM }],
  },
  {
    source, title: 'Stefan: frost after 30 days at -10 °C, k 1.4, water 0.25', unit: 'm', tolerance: 0.08, relative: true, toleranceReason: 'soil water freezes over a band of 1 K, a twentieth of the drive, and the half layer at 1 m', origin: 'closed form',
    rows: [{ name: 'depth', expected: 0.932, model: once(() => stefanDepthM({ conductivityWPerMK: 1.4, waterFraction: 0.25 }, -10, 30)) }],
  },
  {
    source, title: 'closed-form set: frost after 300 degree days', unit: 'm', tolerance: 0.08, relative: true, toleranceReason: 'the same', origin: 'closed form', ...absentUnlessClosedForms,
    rows: closedForms ? [{ name: 'depth', expected: closedForms.stefan_frost_depth.X_m, model: once(() => stefanDepthM({ conductivityWPerMK: closedForms!.stefan_frost_depth.k_f, waterFraction: closedForms!.stefan_frost_depth.theta_water }, -10, closedForms!.stefan_frost_depth.F_C_day / 10)) }] : [],
  },
  {
    source, title: 'dew on a film, 2.5 W/(m2 K) at sea level', unit: 'as named', tolerance: 0.02, relative: true, toleranceReason: 'worked out with 2.50 MJ/kg and Hyland-Wexler; humidity printed to three digits', origin: 'closed form',
    rows: [
      ...dewRows('film -2, air 2 °C at 95 %', { airC: 2, humidity: 0.95, filmC: -2 }, { air: 4.14, film: 3.19, latent: 5.89, perHour: 8.5 }),
      ...dewRows('film -5, air 0 °C at 95 %', { airC: 0, humidity: 0.95, filmC: -5 }, { latent: 6.89, perHour: 9.9 }),
      ...dewRows('film 0, air 5 °C saturated', { airC: 5, humidity: 1, filmC: 0 }, { latent: 10.08, perHour: 14.5 }),
    ],
  },
];
