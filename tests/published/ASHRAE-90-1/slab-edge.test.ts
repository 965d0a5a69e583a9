import { testEachRow } from '../each-row.js';
import { tables } from './cases.js';

export const source = 'ASHRAE-90-1';

testEachRow(tables);
