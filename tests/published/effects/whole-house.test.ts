import { testEachRow } from '../each-row.js';
import { effectTables, sources } from './cases.js';

export const source = sources;

testEachRow(effectTables);
