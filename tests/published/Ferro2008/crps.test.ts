import { testEachRow } from '../each-row.js';
import { tables } from './cases.js';

export const source = 'Ferro2008';

testEachRow(tables);
