import { testEachRow } from '../each-row.js';
import { tables } from './cases.js';

export const source = 'Siegel2002';

testEachRow(tables);
