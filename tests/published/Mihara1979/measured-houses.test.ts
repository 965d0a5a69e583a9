import { testEachRow } from '../each-row.js';
import { tables } from './cases.js';

export const source = 'Mihara1979';

testEachRow(tables);
