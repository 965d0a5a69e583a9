import { testEachRow } from '../each-row.js';
import { tables } from './cases.js';

export const source = 'Prata1996';

testEachRow(tables);
