import { testEachRow } from '../each-row.js';
import { tables } from './cases.js';

export const source = 'Thompson1952';

testEachRow(tables);
