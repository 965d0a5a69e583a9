import { DRY_AIR_HEAT_CAPACITY_J_PER_KGK } from '../../../engine/constants.js';
import { earthTubeEffectiveness, tubeWallWPerM2K } from '../../../engine/ground/earth-tube.js';
import { SECONDS_PER_HOUR } from '../../../engine/units.js';
import { absentUnlessClosedForms, closedForms } from '../closed-form-set.js';
import type { PublishedRow, PublishedTable } from '../published-table.js';

/** Gnielinski 1976, turbulent flow in a smooth tube of 10 cm, air at 8 °C, as evaluated by the ht and fluids libraries (1.0.6, 1.0.26). Tubes end in ground that conducts without limit, so that only the wall counts. */
export const source = 'Gnielinski1976';

const DIAMETER_M = 0.1;
const AIR_KG_PER_M3 = 1.256;
const UNLIMITED_W_PER_MK = 1e9;
const effectiveness = (m3PerHour: number, lengthM: number): number =>
  earthTubeEffectiveness({ airflowM3PerS: m3PerHour / SECONDS_PER_HOUR, diameterM: DIAMETER_M, lengthM, soilConductivityWPerMK: UNLIMITED_W_PER_MK, airDensityKgPerM3: AIR_KG_PER_M3 });

const PRINTED = [[50, 8.72, 0.79, 0.956], [100, 15.09, 0.741, 0.933], [150, 20.71, 0.7095, 0.9156]] as const;
const GROUND_C = 8;
const outletC = (inletC: number, share: number): number => GROUND_C + (inletC - GROUND_C) * (1 - share);

/** The closed-form set gives U instead of a wall: the same law, 1 - exp(-NTU), with its NTU. */
const fromSet = (): PublishedRow[] => {
  if (!closedForms) return [];
  const { T_ground_c, T_in_c, T_out_c, Q_w, mdot, cp, U, D, L } = closedForms.buried_tube_outlet;
  // A tube whose soil alone makes up U: k is chosen so that half a ring and the wall together resist as much.
  const airflowM3PerS = mdot / AIR_KG_PER_M3;
  const filmMKPerW = 1 / (tubeWallWPerM2K(airflowM3PerS, D) * Math.PI * D);
  const neededMKPerW = 1 / (U * Math.PI * D);
  const unitSoil = earthTubeEffectiveness({ airflowM3PerS, diameterM: D, lengthM: L, soilConductivityWPerMK: 1, airDensityKgPerM3: AIR_KG_PER_M3 });
  const unitSoilMKPerW = L / (-Math.log(1 - unitSoil) * mdot * DRY_AIR_HEAT_CAPACITY_J_PER_KGK) - filmMKPerW;
  const share = (): number => earthTubeEffectiveness({ airflowM3PerS, diameterM: D, lengthM: L, soilConductivityWPerMK: unitSoilMKPerW / (neededMKPerW - filmMKPerW), airDensityKgPerM3: AIR_KG_PER_M3 });
  return [
    { name: 'outlet, °C', expected: T_out_c, model: () => T_ground_c + (T_in_c - T_ground_c) * (1 - share()) },
    { name: 'heat, W', expected: Q_w, tolerance: 0.1, model: () => mdot * cp * share() * (T_ground_c - T_in_c) },
  ];
};

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'wall of a tube of 10 cm', unit: 'W/(m2 K)', tolerance: 0.03, relative: true, toleranceReason: '2 % and the properties of air at one temperature', origin: 'library run',
    rows: PRINTED.map(([m3PerHour, expected]) => ({ name: `${m3PerHour} m3/h`, expected, model: () => tubeWallWPerM2K(m3PerHour / SECONDS_PER_HOUR, DIAMETER_M) })),
  },
  {
    source, title: 'how near the air comes to the ground', unit: '1', tolerance: 0.02, toleranceReason: '3 % of the wall', origin: 'library run',
    rows: PRINTED.flatMap(([m3PerHour, , after10, after20]) => [{ name: `${m3PerHour} m3/h, 10 m`, expected: after10, model: () => effectiveness(m3PerHour, 10) }, { name: `${m3PerHour} m3/h, 20 m`, expected: after20, model: () => effectiveness(m3PerHour, 20) }]),
  },
  {
    source, title: 'outlet of 10 m at 100 m3/h, inlet -2, ground 8 °C', unit: '°C', tolerance: 0.15, toleranceReason: '2 % of NTU', origin: 'closed form',
    rows: [{ name: 'outlet', expected: 5.41, model: () => outletC(-2, effectiveness(100, 10)) }],
  },
  { source, title: 'closed-form set: buried tube of NTU 0.5621', unit: 'as named', tolerance: 1e-3, toleranceReason: 'exact but for the route to its U', origin: 'closed form', rows: fromSet(), ...absentUnlessClosedForms },
];
