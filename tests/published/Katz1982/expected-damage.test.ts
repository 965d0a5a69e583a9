import { testEachRow } from '../each-row.js';
import { tables } from './cases.js';

export const source = 'Katz1982';

testEachRow(tables);
