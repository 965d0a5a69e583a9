import { outsideJson } from './outside-data.js';

interface LumpPoint { readonly t_s: number; readonly T_c: number }
interface TwoNodePoint { readonly t_s: number; readonly T_air_c: number; readonly T_mass_c: number }
interface DepthPoint { readonly t_s: number; readonly x_m: number; readonly T_c: number }
interface DampingPoint { readonly z_m: number; readonly amplitude_ratio: number; readonly lag_s: number }

/** The closed-form set as its file has it; only the fields that are read. */
export interface ClosedFormSet {
  readonly lumped_cooling: { readonly C_J_per_K: number; readonly H_W_per_K: number; readonly T0_c: number; readonly Ta_c: number; readonly points: readonly LumpPoint[] };
  readonly lumped_ramp: { readonly C_J_per_K: number; readonly H_W_per_K: number; readonly T0_c: number; readonly Ta0_c: number; readonly ramp_K_per_h: number; readonly points: readonly LumpPoint[] };
  readonly two_node_cooling: { readonly Ca: number; readonly Cm: number; readonly Ham: number; readonly Ho: number; readonly T_air0: number; readonly T_mass0: number; readonly T_out: number; readonly points: readonly TwoNodePoint[] };
  readonly two_node_heater_step: { readonly heater_w: number; readonly points: readonly TwoNodePoint[] };
  readonly semi_infinite_step: { readonly alpha_m2_s: number; readonly k: number; readonly Ti_c: number; readonly Ts_c: number; readonly points: readonly DepthPoint[]; readonly flux: readonly { readonly t_s: number; readonly q_into_soil_w_m2: number }[] };
  readonly semi_infinite_convective: { readonly h: number; readonly k: number; readonly alpha: number; readonly Ti_c: number; readonly Tinf_c: number; readonly points: readonly DepthPoint[] };
  readonly semi_infinite_constant_flux: { readonly q_w_m2: number; readonly k: number; readonly alpha: number; readonly points: readonly { readonly t_s: number; readonly dT_surface_k: number }[] };
  readonly periodic_ground_annual: { readonly alpha: number; readonly points: readonly DampingPoint[] };
  readonly periodic_ground_diurnal: { readonly alpha: number; readonly period_s: number; readonly points: readonly DampingPoint[] };
  readonly plane_wall_step: { readonly L: number; readonly alpha: number; readonly points: readonly { readonly t_s: number; readonly x_over_L: number; readonly theta: number }[] };
  readonly radiating_surface_equilibrium: { readonly points: readonly { readonly T_air_c: number; readonly T_sky_c: number; readonly h: number; readonly eps: number; readonly T_film_c: number }[] };
  readonly t4_cooling: { readonly C: number; readonly A_eps: number; readonly T0_K: number; readonly points: readonly { readonly t_s: number; readonly T_K: number }[] };
  readonly freezing_barrel: { readonly m_kg: number; readonly H_W_per_K: number; readonly Ta_c: number; readonly time_s: number };
  readonly barrel_sensible: { readonly m_kg: number; readonly dT_K: number; readonly Q_MJ: number };
  readonly stefan_frost_depth: { readonly k_f: number; readonly F_C_day: number; readonly theta_water: number; readonly X_m: number };
  readonly buried_tube_outlet: { readonly mdot: number; readonly cp: number; readonly U: number; readonly D: number; readonly L: number; readonly T_ground_c: number; readonly T_in_c: number; readonly T_out_c: number; readonly Q_w: number };
  readonly infiltration_heat: { readonly V_m3: number; readonly ach: number; readonly rho: number; readonly cp: number; readonly H_W_per_K: number };
}

/** Null where the set is absent. */
export const closedForms: ClosedFormSet | null = (outsideJson('analytic/closed-form-cases.json') as { readonly cases: ClosedFormSet } | null)?.cases ?? null;

/** Public origin, for the name of a skipped test. */
export const CLOSED_FORM_ORIGIN = 'closed forms of Incropera and DeWitt, and Carslaw and Jaeger, computed by this project';

export const absentUnlessClosedForms: { readonly absent?: string } = closedForms ? {} : { absent: CLOSED_FORM_ORIGIN };
