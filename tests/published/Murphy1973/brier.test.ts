import { testEachRow } from '../each-row.js';
import { tables } from './cases.js';

export const source = 'Murphy1973';

testEachRow(tables);
