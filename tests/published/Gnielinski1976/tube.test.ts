import { testEachRow } from '../each-row.js';
import { tables } from './cases.js';

export const source = 'Gnielinski1976';

testEachRow(tables);
