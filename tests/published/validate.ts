import { writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { allTables } from './all-tables.js';
import { boxCommand, type BoxRequest } from './box/box-command.js';
import { closingLine, markdown, plainText } from './report-text.js';
import { reportRecord } from './table-report.js';

/**
 * The engine beside the published record: one table a source. Ends with an error when a row is off, and also when outside data are absent:
 * what could not be compared was not validated. With a box case it runs that one instead (tests/published/box/README.md).
 */
const USAGE = `usage: npm run validate -- [--json] [--markdown FILE]
       npm run validate -- --box FILE --weather FILE [--day MM-DD] [--json]`;

interface Options {
  readonly json: boolean;
  readonly markdown?: string;
  readonly box: BoxRequest | null;
}

function readOptions(): Options {
  const text = { type: 'string' } as const;
  const { values } = parseArgs({ options: { json: { type: 'boolean', default: false }, markdown: text, box: text, weather: text, day: text } });
  const { json, box, weather, day } = values;
  if (box === undefined && weather === undefined && day === undefined) return { json, box: null, ...(values.markdown === undefined ? {} : { markdown: values.markdown }) };
  if (box === undefined || weather === undefined) throw new Error(`${box === undefined ? '--box' : '--weather'} is missing: a box case needs its description and a weather file`);
  if (values.markdown !== undefined) throw new Error('--markdown is for the whole record, not for a box case');
  return { json, box: { boxFile: box, weatherFile: weather, json, ...(day === undefined ? {} : { day }) } };
}

function optionsOrUsage(): Options {
  try {
    return readOptions();
  } catch (error) {
    console.error(`${error instanceof Error ? error.message : String(error)}\n${USAGE}`);
    return process.exit(2);
  }
}

async function validateRecord(options: Options): Promise<number> {
  const report = reportRecord(await allTables());
  if (options.markdown !== undefined) writeFileSync(options.markdown, markdown(report));
  console.log(options.json ? JSON.stringify(report, null, 2) : plainText(report));
  if (options.json) console.error(closingLine(report));
  return report.failed === 0 && report.absent === 0 ? 0 : 1;
}

const options = optionsOrUsage();
process.exitCode = options.box ? boxCommand(options.box) : await validateRecord(options);
