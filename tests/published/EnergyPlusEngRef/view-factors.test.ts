import { testEachRow } from '../each-row.js';
import { tables } from './view-factor-cases.js';

export const source = 'EnergyPlusEngRef';

testEachRow(tables);
