import { testEachRow } from '../each-row.js';
import { tables } from './cases.js';

export const source = 'Liu1963';

testEachRow(tables);
