import { readFile } from 'node:fs/promises';
import { findCrop, greenhouseJsonSchema } from '../../engine/index.js';
import { DEMO_GREENHOUSE } from '../console-house.js';
import { readOptions } from './options.js';
import { InputError } from './input-error.js';
import { readGreenhouse } from './read-input.js';

export const GREENHOUSE_USAGE = `duskward greenhouse --example | --check FILE | --schema
  --example     prints a greenhouse file to start from
  --check FILE  says whether a file is right, and what is wrong with each field
  --schema      prints the JSON Schema`;

export async function greenhouse(words: readonly string[]): Promise<void> {
  const options = readOptions(words, { example: { type: 'boolean' }, check: { type: 'string' }, schema: { type: 'boolean' } }, GREENHOUSE_USAGE);
  if (options.help) return void console.log(GREENHOUSE_USAGE);
  if (options.schema) return void console.log(JSON.stringify(greenhouseJsonSchema(), null, 2));
  if (options.example) return void console.log((await readFile(DEMO_GREENHOUSE, 'utf8')).trimEnd());
  if (options.check === undefined) throw new InputError(`nothing to do\n${GREENHOUSE_USAGE}`);
  const checked = await readGreenhouse(options.check);
  const unknown = [...new Set(checked.beds.flatMap(({ crops }) => crops).map((entry) => (typeof entry === 'string' ? entry : entry.crop)).filter((name) => findCrop(name) === null))];
  console.log(`${options.check}: right. ${checked.name}: ${checked.size.width} x ${checked.size.length} m, ${checked.layers.length} layer${checked.layers.length > 1 ? 's' : ''} of film, ${checked.beds.length} bed${checked.beds.length === 1 ? '' : 's'}.`);
  if (unknown.length > 0) console.log(`Not in the crop tables: ${unknown.join(', ')}. Such a crop is judged by its class, half-hardy when none is given: {"crop": "${unknown[0]}", "hardiness": "hardy"}.`);
}
