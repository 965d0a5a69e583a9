import { describe, expect, it } from 'vitest';
import { evenYearCsv } from './invented-weather.js';
import { csvColumns, firstHourOf, hourOfYear, readWeatherYear } from './weather-year.js';

const read = (text: string): unknown => readWeatherYear(csvColumns(text));
const spoilt = (line: number, change: (cells: string[]) => string[]): string => {
  const lines = evenYearCsv(5).trim().split('\n');
  lines[line] = change(lines[line]!.split(',')).join(',');
  return lines.join('\n');
};

describe('a weather file', () => {
  it('is read by the names of its columns', () => {
    expect(readWeatherYear(csvColumns(evenYearCsv(5))).dryBulbC[8759]).toBe(5);
  });

  it.each([
    ['without a column', evenYearCsv(5).replace('dew_point_c', 'dew'), 'no column dew_point_c'],
    ['of part of a year', evenYearCsv(5).split('\n').slice(0, 100).join('\n'), '99 hours; expected the 8760'],
    ['with hours out of order', spoilt(30, (cells) => ['1', '1', ...cells.slice(2)]), 'weather line 31: month, day, hour_end are 1, 1, 6; expected 1, 2, 6'],
    ['with an empty cell', spoilt(30, (cells) => [...cells.slice(0, 3), '', ...cells.slice(4)]), 'weather line 31: dry_bulb_c is ""; expected -60 to 60'],
    ['with a mark for a missing value', spoilt(30, (cells) => [...cells.slice(0, 10), '9999']), 'weather line 31: dhi_wm2 is "9999"'],
    ['that is something else', '{"hourly": {}}', 'no column month'],
  ])('%s is refused with line and expectation', (_what, text, expected) => {
    expect(() => read(text)).toThrow(expected);
  });
});

describe('days and hours', () => {
  it('agree with each other', () => {
    expect(hourOfYear(firstHourOf('02-09')! + 6)).toEqual({ month: 2, day: 9, hourEnd: 7 });
    expect(hourOfYear(8759)).toEqual({ month: 12, day: 31, hourEnd: 24 });
  });

  it.each(['02-29', '13-01', '2-9', 'today'])('%s is no day of the year', (day) => {
    expect(firstHourOf(day)).toBeNull();
  });
});
