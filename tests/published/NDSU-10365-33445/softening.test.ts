import { testEachRow } from '../each-row.js';
import { tables } from './cases.js';

export const source = 'NDSU-10365-33445';

testEachRow(tables);
