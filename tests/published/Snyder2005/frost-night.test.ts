import { testEachRow } from '../each-row.js';
import { tables } from './cases.js';

export const source = 'Snyder2005';

testEachRow(tables);
