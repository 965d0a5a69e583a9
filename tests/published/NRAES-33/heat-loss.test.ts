import { testEachRow } from '../each-row.js';
import { tables } from './heat-loss-cases.js';

export const source = 'NRAES-33';

testEachRow(tables);
