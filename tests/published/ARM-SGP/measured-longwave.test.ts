import { testEachRow } from '../each-row.js';
import { tables } from './cases.js';

export const source = 'ARM-SGP';

testEachRow(tables);
