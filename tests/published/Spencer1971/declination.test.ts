import { testEachRow } from '../each-row.js';
import { tables } from './cases.js';

export const source = 'Spencer1971';

testEachRow(tables);
