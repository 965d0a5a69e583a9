import { testEachRow } from '../each-row.js';
import { tables } from './cases.js';
import { closedFormTables } from './closed-form-cases.js';

export const source = 'Carslaw1959';

testEachRow([...tables, ...closedFormTables]);
