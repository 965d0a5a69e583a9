import { testEachRow } from '../each-row.js';
import { tables } from './cases.js';

export const source = 'Campbell1998';

testEachRow(tables);
