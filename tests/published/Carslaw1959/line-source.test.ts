import { testEachRow } from '../each-row.js';
import { tables } from './line-source-cases.js';

export const source = 'Carslaw1959';

testEachRow(tables);
