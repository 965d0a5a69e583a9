import { testEachRow } from '../each-row.js';
import { tables } from './cases.js';

export const source = 'FAO-56';

testEachRow(tables);
