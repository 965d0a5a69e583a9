import { testEachRow } from '../each-row.js';
import { tables } from './cases.js';

export const source = 'WSU-EB0913';

testEachRow(tables);
