import { SECONDS_PER_DAY } from '../units.js';

const DAYS_TO_EPOCH = 719_468;

/**
 * Midnight UTC of a calendar date; for things that do not mind the hour.
 * Units: a date such as 2026-11-05 in, epoch seconds out.
 * Valid: dates that the schema has checked.
 * Outside: not checked.
 * Source: day count from 1 March of year 0 in the Gregorian calendar, so that the leap day ends a year (Meeus1998 ch. 7 idea).
 */
export function epochOfDateS(date: string): number {
  const [year, month, day] = date.split('-').map(Number) as [number, number, number];
  const yearFromMarch = month > 2 ? year : year - 1;
  const monthFromMarch = (month + 9) % 12;
  const leapDays = Math.floor(yearFromMarch / 4) - Math.floor(yearFromMarch / 100) + Math.floor(yearFromMarch / 400);
  const days = 365 * yearFromMarch + leapDays + Math.floor((153 * monthFromMarch + 2) / 5) + day - 1;
  return (days - DAYS_TO_EPOCH) * SECONDS_PER_DAY;
}
