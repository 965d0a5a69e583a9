import type { Outgoing } from '../../chat.js';
import type { Records } from '../../ports.js';
import { csvText } from '../../text/csv.js';
import { exportText, TABLE_WORDS } from '../../text/export-text.js';
import { exportTables, type ExportSubject } from './export-tables.js';

/** All that is kept, as files for the grower. Nothing is written. */
export async function answerExport(subject: ExportSubject, store: Records): Promise<Outgoing> {
  const { units } = subject.greenhouse.grower;
  const tables = await exportTables(subject, store);
  const documents = tables.map(({ table, rows }) => ({ name: TABLE_WORDS[table].file, text: csvText(TABLE_WORDS[table].header(units), rows) }));
  return { text: exportText(tables), ...(documents.length === 0 ? {} : { documents }) };
}
