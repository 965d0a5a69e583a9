/** Physical constants: value, unit in the name, source beside it (keys resolve in SOURCES.md). */

/** Stefan-Boltzmann constant (CODATA2018). */
export const STEFAN_BOLTZMANN_W_PER_M2K4 = 5.670374419e-8;
/** Standard acceleration of gravity (exact, CODATA2018). */
export const GRAVITY_M_PER_S2 = 9.80665;
/** Specific heat of dry air at constant pressure near 0 degrees C (ASHRAE-F17 ch. 1, 1.006 kJ/(kg K)). */
export const DRY_AIR_HEAT_CAPACITY_J_PER_KGK = 1006;
/** Specific heat of water vapour (ASHRAE-F17 ch. 1 eq. 30, 1.86 kJ/(kg K)). */
export const VAPOUR_HEAT_CAPACITY_J_PER_KGK = 1860;
/** Gas constant of dry air as used in the moist-air volume equation (ASHRAE-F17 ch. 1 eq. 26). */
export const DRY_AIR_GAS_CONSTANT_J_PER_KGK = 287.042;
/** Ratio of the molar masses of water and dry air (ASHRAE-F17 ch. 1 eq. 20). */
export const WATER_TO_DRY_AIR_MASS_RATIO = 0.621945;
/** Heat of vaporisation of water near 0 degrees C (ASHRAE-F17 ch. 1, 2501 kJ/kg). */
export const VAPORISATION_HEAT_J_PER_KG = 2.501e6;
/** Heat of sublimation of ice near 0 degrees C (ASHRAE-F17 ch. 1 eq. 35, 2830 kJ/kg). */
export const SUBLIMATION_HEAT_J_PER_KG = 2.83e6;
/** Heat of fusion of ice at 0 degrees C (Incropera2007 table A.3, 334 kJ/kg). */
export const FUSION_HEAT_J_PER_KG = 334_000;
/** Density of liquid water, rounded (Incropera2007 table A.6). */
export const WATER_DENSITY_KG_PER_M3 = 1000;
/** Specific heat of liquid water near 10 degrees C (Incropera2007 table A.6 rounded). */
export const WATER_HEAT_CAPACITY_J_PER_KGK = 4186;
/** Specific heat of ice near 0 degrees C (Incropera2007 table A.3). */
export const ICE_HEAT_CAPACITY_J_PER_KGK = 2040;
/** Pressure of the standard atmosphere at sea level (ASHRAE-F17 ch. 1 eq. 3). */
export const STANDARD_PRESSURE_PA = 101_325;
