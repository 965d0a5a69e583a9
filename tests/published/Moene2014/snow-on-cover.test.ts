import { testEachRow } from '../each-row.js';
import { tables } from './cases.js';

export const source = 'Moene2014';

testEachRow(tables);
