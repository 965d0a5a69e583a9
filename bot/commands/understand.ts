import { createInterface } from 'node:readline';
import { IANAZone } from 'luxon';
import { CROP_WORDS } from '../conversation.js';
import { understand as understandMessage } from '../language/understand.js';
import { zoneOf } from '../time-zone.js';
import { readOptions } from './options.js';
import { InputError } from './input-error.js';
import { readGreenhouse, readInstant } from './read-input.js';

export const UNDERSTAND_USAGE = `duskward understand [--units F|C] [--at TIME] [--zone ZONE] [--greenhouse FILE]
  One message a line on standard input, one JSON intent a line on standard output. Of several things in one message the
  first is what must not be lost (a reading before a deed before a question); the rest are in "also".`;

export async function understand(words: readonly string[]): Promise<void> {
  const options = readOptions(words, { units: { type: 'string' }, at: { type: 'string' }, zone: { type: 'string' }, greenhouse: { type: 'string' } }, UNDERSTAND_USAGE);
  if (options.help) return void console.log(UNDERSTAND_USAGE);
  const greenhouse = options.greenhouse === undefined ? null : await readGreenhouse(options.greenhouse);
  const units = options.units ?? greenhouse?.grower.units ?? 'C';
  if (units !== 'C' && units !== 'F') throw new InputError(`--units: expected F or C, got ${JSON.stringify(units)}`);
  const zone = options.zone ?? (greenhouse ? zoneOf(greenhouse) : 'UTC');
  if (!IANAZone.isValidZone(zone)) throw new InputError(`--zone: expected an IANA name such as America/Toronto, got ${JSON.stringify(zone)}`);
  const atS = options.at === undefined ? Math.floor(Date.now() / 1000) : readInstant(options.at, '--at');
  for await (const line of createInterface({ input: process.stdin, terminal: false })) console.log(JSON.stringify(understandMessage({ text: line, atS, zone, units, crops: CROP_WORDS })));
}
