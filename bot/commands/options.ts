import { parseArgs } from 'node:util';
import { InputError } from './input-error.js';

export type OptionKinds = Readonly<Record<string, { readonly type: 'string' | 'boolean' }>>;

type Values<Kinds extends OptionKinds> = { readonly [Name in keyof Kinds]?: Kinds[Name]['type'] extends 'boolean' ? boolean : string };

/** Options of a command; an unknown one is refused with the usage. */
export function readOptions<const Kinds extends OptionKinds>(words: readonly string[], kinds: Kinds, usage: string): Values<Kinds> & { readonly help?: boolean } {
  try {
    return parseArgs({ args: [...words], options: { ...kinds, help: { type: 'boolean' } }, strict: true, allowPositionals: false }).values;
  } catch (error) {
    throw new InputError(`${error instanceof Error ? error.message : String(error)}\n${usage}`);
  }
}

export function required(value: string | undefined, option: string, usage: string): string {
  if (value === undefined) throw new InputError(`${option} is missing\n${usage}`);
  return value;
}
