import { testEachRow } from '../each-row.js';
import { tables } from './cases.js';

export const source = 'Kusuda1965';

testEachRow(tables);
