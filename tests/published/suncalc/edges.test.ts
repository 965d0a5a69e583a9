import { testEachRow } from '../each-row.js';
import { edgeTables } from './edge-cases.js';

export const source = 'suncalc';

testEachRow(edgeTables);
