import { testEachRow } from '../each-row.js';
import { tables } from './cases.js';

export const source = 'Jordan2019';

testEachRow(tables);
