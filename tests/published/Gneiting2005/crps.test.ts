import { testEachRow } from '../each-row.js';
import { tables } from './cases.js';

export const source = 'Gneiting2005';

testEachRow(tables);
