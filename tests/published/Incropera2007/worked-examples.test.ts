import { testEachRow } from '../each-row.js';
import { tables } from './worked-example-cases.js';

export const source = 'Incropera2007';

testEachRow(tables);
