import { createRequire } from 'node:module';

/** The functions of psychrolib 1.1.1 (npm) that the tests compare with; it is CommonJS without types. °C, Pa, kg/kg, fraction. */
export interface ReferenceLibrary {
  readonly SI: unknown;
  SetUnitSystem(system: unknown): void;
  GetSatVapPres(tempC: number): number;
  GetHumRatioFromVapPres(vapourPressurePa: number, pressurePa: number): number;
  GetTDewPointFromVapPres(tempC: number, vapourPressurePa: number): number;
  GetTWetBulbFromHumRatio(tempC: number, humidityRatio: number, pressurePa: number): number;
  GetMoistAirEnthalpy(tempC: number, humidityRatio: number): number;
  GetMoistAirDensity(tempC: number, humidityRatio: number, pressurePa: number): number;
  GetStandardAtmPressure(elevationM: number): number;
}

export const psychrolib = createRequire(import.meta.url)('psychrolib') as ReferenceLibrary;
psychrolib.SetUnitSystem(psychrolib.SI);
