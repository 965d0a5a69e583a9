import { testEachRow } from '../each-row.js';
import { tables } from './cases.js';
import { closedFormTables } from './closed-form-cases.js';

export const source = 'Incropera2007';

testEachRow([...tables, ...closedFormTables]);
