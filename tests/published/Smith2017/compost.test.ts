import { testEachRow } from '../each-row.js';
import { tables } from './cases.js';

export const source = 'Smith2017';

testEachRow(tables);
