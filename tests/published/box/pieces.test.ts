import { testEachRow } from '../each-row.js';
import { tables } from './cases.js';

testEachRow(tables);
