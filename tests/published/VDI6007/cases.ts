import { SECONDS_PER_HOUR } from '../../../engine/units.js';
import { outsideJson } from '../outside-data.js';
import type { PublishedRow, PublishedTable } from '../published-table.js';
import { once, runRc, type RcNetwork } from '../rc-network.js';

/**
 * VDI 6007-1 test cases 1 to 5: heavy and light room, 1000 W as convection or radiation, outside temperature and shaded sun. Network and
 * reference as carried by lbl-srg/modelica-buildings (ReducedOrder/Validation/VDI6007, modified BSD). Hourly means of days 1, 10 and 60.
 */
export const source = 'VDI6007';

const ORIGIN = 'lbl-srg/modelica-buildings, Buildings/ThermalZones/ReducedOrder/Validation/VDI6007';

interface OutsideCase {
  readonly parameters: { readonly RExt: number; readonly RExtRem: number; readonly CExt: number; readonly RInt: number; readonly CInt: number };
  readonly areas_m2: { readonly ext: number; readonly int: number };
  readonly h_conv: { readonly ext: number; readonly int: number };
  readonly h_rad_linear: number;
  readonly h_outdoor_conv_total_W_per_K: number;
  readonly initial_c: number;
  readonly schedule: {
    readonly outdoor_c_hourly: readonly number[];
    readonly convective_gain_w_hourly: readonly number[];
    readonly radiative_gain_w_hourly: readonly number[];
    readonly solar_through_window_w_hourly: readonly number[];
    readonly solar_convective_fraction: number;
  };
  readonly reference: readonly { readonly hour_end: number; readonly t_air_c: number }[];
  readonly published_tolerance_K: number;
}

const outside = outsideJson('analytic/vdi6007-cases-1-5.json') as { readonly cases: Readonly<Record<string, OutsideCase>> } | null;

// Lumps: outer wall mass, its inner face, inner wall mass, its face, air; boundary 5 is outside.
const [EXT_MASS, EXT_FACE, INT_MASS, INT_FACE, AIR, OUTSIDE] = [0, 1, 2, 3, 4, 5] as const;
const STEP_S = 300;

function network(given: OutsideCase): RcNetwork {
  const { parameters, areas_m2, h_conv, schedule } = given;
  const hourOf = (timeS: number): number => (Math.ceil(timeS / SECONDS_PER_HOUR) - 1) % 24;
  const faceShare = (node: number): number => (node === EXT_FACE ? areas_m2.ext : node === INT_FACE ? areas_m2.int : 0) / (areas_m2.ext + areas_m2.int);
  return {
    capacitiesJPerK: [parameters.CExt, 0, parameters.CInt, 0, 0],
    startC: [0, 1, 2, 3, 4].map(() => given.initial_c),
    links: [
      [EXT_MASS, OUTSIDE, 1 / (parameters.RExtRem + 1 / given.h_outdoor_conv_total_W_per_K)],
      [EXT_MASS, EXT_FACE, 1 / parameters.RExt],
      [INT_MASS, INT_FACE, 1 / parameters.RInt],
      [EXT_FACE, AIR, h_conv.ext * areas_m2.ext],
      [INT_FACE, AIR, h_conv.int * areas_m2.int],
      [EXT_FACE, INT_FACE, given.h_rad_linear * Math.min(areas_m2.ext, areas_m2.int)],
    ],
    boundariesC: [(timeS) => schedule.outdoor_c_hourly[hourOf(timeS)]!],
    powerW: (timeS, node) => {
      const hour = hourOf(timeS);
      const sun = schedule.solar_through_window_w_hourly[hour]!;
      if (node === AIR) return schedule.convective_gain_w_hourly[hour]! + schedule.solar_convective_fraction * sun;
      return faceShare(node) * schedule.radiative_gain_w_hourly[hour]! + (node === INT_FACE ? (1 - schedule.solar_convective_fraction) * sun : 0);
    },
  };
}

/** Mean air temperature of each hour, by the hour's number. */
function hourlyMeansC(given: OutsideCase): ReadonlyMap<number, number> {
  const wanted = new Set(given.reference.map(({ hour_end }) => hour_end));
  const sums = new Map<number, number>();
  runRc(network(given), { durationS: Math.max(...wanted) * SECONDS_PER_HOUR, stepS: STEP_S }, (timeS, tempsC) => {
    const hour = Math.ceil(timeS / SECONDS_PER_HOUR);
    if (wanted.has(hour)) sums.set(hour, (sums.get(hour) ?? 0) + (tempsC[AIR]! * STEP_S) / SECONDS_PER_HOUR);
  });
  return sums;
}

export const tables: readonly PublishedTable[] = outside
  ? Object.entries(outside.cases).map(([name, given]): PublishedTable => {
      const means = once(() => hourlyMeansC(given));
      return {
        source, title: name, unit: '°C', tolerance: given.published_tolerance_K, toleranceReason: 'limit of the source suite; reference printed to 0.1 K', origin: 'published',
        rows: given.reference.map(({ hour_end, t_air_c }): PublishedRow => ({ name: `hour ${hour_end}`, expected: t_air_c, model: () => means().get(hour_end)! })),
      };
    })
  : [{ source, title: 'test cases 1-5', unit: '°C', tolerance: 0.15, toleranceReason: 'limit of the source suite', origin: 'published', rows: [], absent: ORIGIN }];
