import { writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { allTables } from './all-tables.js';
import { closingLine, markdown, plainText } from './report-text.js';
import { reportRecord } from './table-report.js';

/**
 * The engine beside the published record: one table a source. Ends with an error when a row is off, and also when outside data are absent:
 * what could not be compared was not validated.
 */
const USAGE = 'usage: npm run validate -- [--json] [--markdown FILE]';

function readOptions(): { json: boolean; markdown?: string } {
  try {
    const { values } = parseArgs({ options: { json: { type: 'boolean', default: false }, markdown: { type: 'string' } } });
    return { json: values.json, ...(values.markdown === undefined ? {} : { markdown: values.markdown }) };
  } catch (error) {
    console.error(`${error instanceof Error ? error.message : String(error)}\n${USAGE}`);
    return process.exit(2);
  }
}

const options = readOptions();
const report = reportRecord(await allTables());
if (options.markdown !== undefined) writeFileSync(options.markdown, markdown(report));
console.log(options.json ? JSON.stringify(report, null, 2) : plainText(report));
if (options.json) console.error(closingLine(report));
process.exitCode = report.failed === 0 && report.absent === 0 ? 0 : 1;
