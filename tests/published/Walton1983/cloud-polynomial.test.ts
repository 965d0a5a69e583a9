import { testEachRow } from '../each-row.js';
import { tables } from './cloud-cases.js';

export const source = 'Walton1983';

testEachRow(tables);
