import { testEachRow } from '../each-row.js';
import { tables } from './cases.js';

export const source = 'Stull2011';

testEachRow(tables);
