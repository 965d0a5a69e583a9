import { testEachRow } from '../each-row.js';
import { tables } from './cases.js';

export const source = 'Roberts1985';

testEachRow(tables);
