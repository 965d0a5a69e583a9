import { testEachRow } from '../each-row.js';
import { tables } from './cases.js';

export const source = 'Swinbank1963';

testEachRow(tables);
