import { testEachRow } from '../each-row.js';
import { tables } from './cases.js';

export const source = 'ISO13790';

testEachRow(tables);
