import { testEachRow } from '../each-row.js';
import { tables } from './cases.js';

export const source = 'RifeZeinali2003';

testEachRow(tables);
