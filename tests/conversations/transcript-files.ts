import { readdirSync, readFileSync } from 'node:fs';

/** Every transcript of a folder, its lines with where they stand; null is a line that says nothing. */
export const transcriptsIn = <Line extends object>(folder: URL, lineOf: (written: string) => Line | null): readonly { readonly name: string; readonly lines: readonly (Line & { readonly at: number })[] }[] =>
  readdirSync(folder)
    .filter((name) => name.endsWith('.txt'))
    .sort()
    .map((name) => ({
      name: name.replace(/\.txt$/u, '').replaceAll('-', ' '),
      lines: readFileSync(new URL(name, folder), 'utf8').split('\n').flatMap((written, at) => {
        const line = lineOf(written);
        return line === null ? [] : [{ ...line, at: at + 1 }];
      }),
    }));
