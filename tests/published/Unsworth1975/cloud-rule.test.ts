import { testEachRow } from '../each-row.js';
import { tables } from './cases.js';

export const source = 'Unsworth1975';

testEachRow(tables);
