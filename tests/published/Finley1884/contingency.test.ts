import { testEachRow } from '../each-row.js';
import { tables } from './cases.js';

export const source = 'Finley1884';

testEachRow(tables);
