import { testEachRow } from '../each-row.js';
import { tables } from './cases.js';

export const source = 'ASHRAE-F09';

testEachRow(tables);
