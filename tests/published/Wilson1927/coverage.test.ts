import { testEachRow } from '../each-row.js';
import { tables } from './cases.js';

export const source = 'Wilson1927';

testEachRow(tables);
