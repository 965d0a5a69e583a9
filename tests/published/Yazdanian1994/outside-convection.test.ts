import { testEachRow } from '../each-row.js';
import { tables } from './cases.js';

export const source = 'Yazdanian1994';

testEachRow(tables);
