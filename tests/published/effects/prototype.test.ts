import { describe, expect, it } from 'vitest';
import { testEachRow } from '../each-row.js';
import { deviceTable, houseTable, prototypeTables, weatherTable } from './prototype-cases.js';

export const source = 'Prototype2026';

testEachRow(prototypeTables);

/** Same sign and within a factor of five, or both too small to matter. */
const FACTOR = 5;
const SMALL_K = 0.15;
const sameOrder = (printed: number, own: number): boolean => (Math.abs(printed) < SMALL_K && Math.abs(own) < SMALL_K) || (own / printed > 1 / FACTOR && own / printed < FACTOR);

/** Its note says why: films that condense on are nearly alike in the longwave, and the soil is pinned at freezing. */
const OUT_OF_ORDER = ['7 inner film stops longwave'];

describe('every effect beside the prototype', () => {
  const rows = [weatherTable, houseTable, deviceTable].flatMap((table) => table.rows);

  it('has its sign and order of magnitude, one row excepted', () => {
    expect(rows.filter(({ expected, model }) => !sameOrder(expected, model())).map(({ name }) => name)).toEqual(OUT_OF_ORDER);
  });

  it('that differs by more than half says why, with its fluxes', () => {
    const off = rows.filter(({ expected, model }) => Math.abs(model() - expected) > Math.max(SMALL_K, Math.abs(expected) / 2));
    expect(off.filter(({ note }) => note === undefined).map(({ name }) => name)).toEqual([]);
    for (const { note } of off) expect(note!()).toMatch(/-?\d+\.\d to -?\d+\.\d|\d+\.\d W\/m2/u);
  });
});
