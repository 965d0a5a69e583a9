import { testEachRow } from '../each-row.js';
import { tables } from './cases.js';

export const source = 'ClarkAllen1978';

testEachRow(tables);
