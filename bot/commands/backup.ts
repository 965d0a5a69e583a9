import { statSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { readSettings } from '../../config/settings.js';
import { copyOfFile } from '../store/backup.js';
import { InputError } from './input-error.js';

export const BACKUP_USAGE = `duskward backup FILE
  A copy of the database, whole and checked, while the assistant goes on running. FILE must not be there yet.
  To restore: stop, move the database away with its -wal and -shm files, copy FILE to its place, start.`;

export async function backup(words: readonly string[]): Promise<void> {
  const { help, files } = read(words);
  if (help) return void console.log(BACKUP_USAGE);
  const [file, ...more] = files;
  if (file === undefined || more.length > 0) throw new InputError(`expected one FILE, got ${files.length === 0 ? 'none' : files.join(' ')}\n${BACKUP_USAGE}`);
  const { DUSKWARD_DATABASE: database } = readSettings(process.env);
  await copyOfFile(database!, file);
  console.log(`${file}: ${statSync(file).size} bytes, a sound copy of ${database}`);
}

function read(words: readonly string[]): { readonly help: boolean; readonly files: readonly string[] } {
  try {
    const { values, positionals } = parseArgs({ args: [...words], options: { help: { type: 'boolean' } }, strict: true, allowPositionals: true });
    return { help: values.help === true, files: positionals };
  } catch (error) {
    throw new InputError(`${error instanceof Error ? error.message : String(error)}\n${BACKUP_USAGE}`);
  }
}
