import { testEachRow } from '../each-row.js';
import { tables } from './cases.js';

export const source = 'Morin2012';

testEachRow(tables);
