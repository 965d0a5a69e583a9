import { testEachRow } from '../each-row.js';
import { tables } from './cases.js';

export const source = 'Bleier1998';

testEachRow(tables);
