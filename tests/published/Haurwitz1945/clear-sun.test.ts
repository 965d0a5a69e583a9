import { testEachRow } from '../each-row.js';
import { tables } from './cases.js';

export const source = 'Haurwitz1945';

testEachRow(tables);
