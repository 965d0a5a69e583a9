import { describe, expect, it } from 'vitest';
import { testEachRow } from '../each-row.js';
import { isAbsent, nightScores, tables } from './cases.js';

export const source = 'SURFRAD-Bondville';

testEachRow(tables);

describe.skipIf(isAbsent)("SURFRAD-Bondville cold nights: the engine's sky", () => {
  it('strays less than each of the twelve formulas with the plain linear cloud rule', () => {
    const { engine, rivals } = nightScores();
    expect(rivals.filter(({ score }) => score.rmse <= engine.rmse).map(({ name, score }) => `${name} ${score.rmse.toFixed(2)} against ${engine.rmse.toFixed(2)}`)).toEqual([]);
  });
});
