import { testEachRow } from '../each-row.js';
import { tables } from './cases.js';

export const source = 'Kalman1960';

testEachRow(tables);
