import type { Clause, Quantity } from './clause.js';
import type { FanSaid } from './house-fact.js';

/** Airflow, power and what drives it; null where no fan is spoken of. */
export function readFan(clause: Clause): FanSaid | null {
  const airflow = clause.quantity(clause.take(/ (#Q\d+) /)?.[1]);
  const power = clause.quantity(clause.take(/ (#P\d+) /)?.[1]);
  const capacity = clause.take(/ (#E\d+) /);
  const amps = capacity === null ? clause.take(/ (#H\d+) /) : null;
  const volts = clause.take(/ (#U\d+) /);
  const battery = clause.quantity(capacity?.[1]) ?? wattHours(clause.quantity(amps?.[1])?.value, clause.quantity(volts?.[1])?.value);
  const hasBattery = clause.takes(/ @battery /) || battery !== null;
  const sun = clause.takes(/ @sunfan /);
  const mains = clause.takes(/ @mains /);
  const on = clause.takes(/ (?:day and night|all the time|always|runs all day|running all day|around the clock|24 7|nonstop|non stop|constantly) /);
  const named = clause.takes(/ (?:@fan|@airfan) /);
  clause.takeAll(/ (?:@fan|@airfan|@battery|@sunfan) /);
  if (!named && airflow === null && power === null && !hasBattery && !sun && !mains) return null;
  const supply = hasBattery ? 'battery' : sun ? 'sun' : mains ? 'mains' : null;
  return { ...(airflow === null ? {} : { airflow }), ...(power === null ? {} : { power }), ...(supply === null ? {} : { supply }), ...(battery === null ? {} : { battery }), ...(on ? { on } : {}) };
}

/** "100 Ah 12 V"; without the volts it is not known what a battery holds. */
const wattHours = (ampHours: number | undefined, volts: number | undefined): Quantity | null => (ampHours === undefined || volts === undefined ? null : { value: ampHours * volts, unit: 'wh' });
