import { testEachRow } from '../each-row.js';
import { tables } from './cases.js';

export const source = 'BerdahlMartin1984';

testEachRow(tables);
