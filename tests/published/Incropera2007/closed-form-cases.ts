import { leakageM3PerS } from '../../../engine/airflow/infiltration.js';
import { waterStore } from '../../../engine/mass/water-drum.js';
import { emptySources, stepImplicit } from '../../../engine/network/implicit-step.js';
import { createNetwork, steadyConductor } from '../../../engine/network/network.js';
import { heatOfStoreJ } from '../../../engine/network/enthalpy.js';
import { celsiusToKelvin, SECONDS_PER_HOUR, ZERO_CELSIUS_K } from '../../../engine/units.js';
import { absentUnlessClosedForms, closedForms, type ClosedFormSet } from '../closed-form-set.js';
import type { PublishedRow, PublishedTable } from '../published-table.js';
import { extrapolatedRc, once, type RcNetwork } from '../rc-network.js';

export const source = 'Incropera2007';

const rowsOf = (build: (set: ClosedFormSet) => PublishedRow[]): PublishedRow[] => (closedForms ? build(closedForms) : []);

/** The temperatures of a run at the instants of its points, shared by its rows. */
const sharedRun = (rc: RcNetwork, instantsS: readonly number[], stepS: number): ((instantS: number, lump: number) => number) => {
  const run = once(() => extrapolatedRc(rc, instantsS.filter((instant) => instant > 0), stepS));
  return (instantS, lump) => (instantS === 0 ? rc.startC[lump]! : run().get(instantS)![lump]!);
};

const lumped = rowsOf(({ lumped_cooling: cooling, lumped_ramp: ramp }) => {
  const cool = sharedRun({ capacitiesJPerK: [cooling.C_J_per_K], startC: [cooling.T0_c], links: [[0, 1, cooling.H_W_per_K]], boundariesC: [() => cooling.Ta_c] }, cooling.points.map(({ t_s }) => t_s), 10);
  const fall = sharedRun(
    { capacitiesJPerK: [ramp.C_J_per_K], startC: [ramp.T0_c], links: [[0, 1, ramp.H_W_per_K]], boundariesC: [(timeS) => ramp.Ta0_c + (ramp.ramp_K_per_h * timeS) / SECONDS_PER_HOUR] },
    ramp.points.map(({ t_s }) => t_s),
    10,
  );
  return [
    ...cooling.points.map(({ t_s, T_c }) => ({ name: `cooling, ${t_s} s`, expected: T_c, model: () => cool(t_s, 0) })),
    ...ramp.points.map(({ t_s, T_c }) => ({ name: `outside falling, ${t_s} s`, expected: T_c, model: () => fall(t_s, 0) })),
  ];
});

/** Past a day the second instant set lies at the steady end; the run stops at 14 h and leaves that point out. */
const LONGEST_S = 50_400;
const twoLumps = rowsOf((set) => {
  const { Ca, Cm, Ham, Ho, T_air0, T_mass0, T_out, points } = set.two_node_cooling;
  const network = (heaterW: number): RcNetwork => ({ capacitiesJPerK: [Ca, Cm], startC: [T_air0, T_mass0], links: [[0, 2, Ho], [0, 1, Ham]], boundariesC: [() => T_out], powerW: (_, node) => (node === 0 ? heaterW : 0) });
  const sets = [
    { name: 'air and mass', points, heaterW: 0 },
    { name: 'air and mass, heater', points: set.two_node_heater_step.points.filter(({ t_s }) => t_s <= LONGEST_S), heaterW: set.two_node_heater_step.heater_w },
  ];
  return sets.flatMap(({ name, points: listed, heaterW }) => {
    const run = sharedRun(network(heaterW), listed.map(({ t_s }) => t_s), 4);
    return listed.flatMap(({ t_s, T_air_c, T_mass_c }) => [
      { name: `${name}, ${t_s} s, air`, expected: T_air_c, model: () => run(t_s, 0) },
      { name: `${name}, ${t_s} s, mass`, expected: T_mass_c, model: () => run(t_s, 1) },
    ]);
  });
});

/** Half of a wall stepped on its face, in forty slices; the network alone, not the soil grid. */
const wall = rowsOf(({ plane_wall_step: { L, alpha, points } }) => {
  const slices = 40;
  const thicknessM = L / slices;
  const rc: RcNetwork = {
    capacitiesJPerK: Array.from({ length: slices }, () => thicknessM / alpha),
    startC: Array.from({ length: slices }, () => 1),
    links: Array.from({ length: slices }, (_, i) => [i, i + 1, i === slices - 1 ? 2 / thicknessM : 1 / thicknessM] as const),
    boundariesC: [() => 0],
  };
  const at = sharedRun(rc, [...new Set(points.map(({ t_s }) => t_s))], 40);
  const between = (timeS: number, share: number): number => {
    const position = Math.max(0, share * slices - 0.5);
    const i = Math.floor(position);
    return at(timeS, i) + (position - i) * (at(timeS, i + 1) - at(timeS, i));
  };
  return points.map(({ t_s, x_over_L, theta }) => ({ name: `wall, ${t_s} s, ${x_over_L} of its half`, expected: theta, tolerance: 0.002, model: () => between(t_s, x_over_L) }));
});

const radiating = rowsOf(({ radiating_surface_equilibrium: { points }, t4_cooling: cooling }) => {
  const space = -ZERO_CELSIUS_K;
  const cold = sharedRun(
    { capacitiesJPerK: [cooling.C], startC: [cooling.T0_K - ZERO_CELSIUS_K], links: [], boundariesC: [() => space], radiators: [{ a: 0, b: 1, exchangeAreaM2: cooling.A_eps }] },
    cooling.points.map(({ t_s }) => t_s),
    10,
  );
  return [
    ...points.map(({ T_air_c, T_sky_c, h, eps, T_film_c }) => {
      const film: RcNetwork = { capacitiesJPerK: [0], startC: [T_air_c], links: [[0, 1, h]], boundariesC: [() => T_air_c, () => T_sky_c], radiators: [{ a: 0, b: 2, exchangeAreaM2: eps }] };
      return { name: `film at ${T_air_c} °C under ${T_sky_c} °C, h ${h}, emissivity ${eps}`, expected: T_film_c, tolerance: 1e-4, model: () => extrapolatedRc(film, [600], 600).get(600)![0]! };
    }),
    ...cooling.points.map(({ t_s, T_K }) => ({ name: `radiating into 0 K, ${t_s} s`, expected: T_K - ZERO_CELSIUS_K, model: () => cold(t_s, 0) })),
  ];
});

/** Time until a drum in cold air has given up all its latent heat, by the engine's store and step. */
function freezingTimeS(massKg: number, conductanceWPerK: number, airTempC: number): number {
  const store = waterStore(massKg);
  const network = createNetwork({ nodes: [{ name: 'drum', store }], boundaries: ['air'], conductors: [steadyConductor(0, 1, conductanceWPerK)], radiators: [] });
  const tempsK = Float64Array.from([ZERO_CELSIUS_K, celsiusToKelvin(airTempC)]);
  const sources = emptySources(1);
  const stepS = 600;
  let timeS = 0;
  for (; heatOfStoreJ(store, tempsK[0]!) > 0; timeS += stepS) stepImplicit({ network, tempsK, stepS, sources, updateSources: () => undefined });
  return timeS;
}

export const closedFormTables: readonly PublishedTable[] = [
  {
    source, title: 'closed-form set: lumps, two lumps, wall, radiating bodies', unit: '°C', tolerance: 0.01, ...absentUnlessClosedForms,
    toleranceReason: 'acceptance 0.01 K, backward Euler extrapolated (Richardson); the wall in 40 slices 0.002', origin: 'closed form',
    rows: [...lumped, ...twoLumps, ...wall, ...radiating],
  },
  {
    source, title: 'closed-form set: drum and air', unit: 'as named', tolerance: 0.001, relative: true, toleranceReason: 'exact but for rounding; freezing 2 % for the band of 0.2 K below 0 °C and 334 against 333.55 kJ/kg', origin: 'closed form', ...absentUnlessClosedForms,
    rows: rowsOf(({ barrel_sensible: barrel, infiltration_heat: leak, freezing_barrel: frozen }) => [
      { name: 'drum over 10 K, MJ', expected: barrel.Q_MJ, model: () => (heatOfStoreJ(waterStore(barrel.m_kg), celsiusToKelvin(5 + barrel.dT_K)) - heatOfStoreJ(waterStore(barrel.m_kg), celsiusToKelvin(5))) / 1e6 },
      { name: 'infiltration, W/K', expected: leak.H_W_per_K, model: () => leakageM3PerS({ stillAirChangesPerHour: leak.ach, perWindAirChangesPerHour: 0 }, leak.V_m3, 0) * leak.rho * leak.cp },
      { name: 'freezing through, s', expected: frozen.time_s, tolerance: 0.02, model: () => freezingTimeS(frozen.m_kg, frozen.H_W_per_K, frozen.Ta_c) },
    ]),
  },
];
