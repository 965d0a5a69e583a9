import { testEachRow } from '../each-row.js';
import { tables } from './cases.js';

export const source = 'Rasheed2017';

testEachRow(tables);
