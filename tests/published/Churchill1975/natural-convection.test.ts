import { testEachRow } from '../each-row.js';
import { tables } from './cases.js';

export const source = 'Churchill1975';

testEachRow(tables);
