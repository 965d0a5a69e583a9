import { testEachRow } from '../each-row.js';
import { tables } from './cases.js';

export const source = 'IdsoJackson1969';

testEachRow(tables);
