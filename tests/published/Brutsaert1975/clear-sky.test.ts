import { testEachRow } from '../each-row.js';
import { tables } from './cases.js';

export const source = 'Brutsaert1975';

testEachRow(tables);
