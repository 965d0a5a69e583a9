import { testEachRow } from '../each-row.js';
import { tables } from './ground-cooling-cases.js';

export const source = 'Carslaw1959';

testEachRow(tables);
