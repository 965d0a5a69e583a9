import { testEachRow } from '../each-row.js';
import { tables } from './cases.js';

export const source = 'Verlodt1990';

testEachRow(tables);
