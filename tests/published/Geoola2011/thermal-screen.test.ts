import { testEachRow } from '../each-row.js';
import { tables } from './cases.js';

export const source = 'Geoola2011';

testEachRow(tables);
