import { readProjectFile } from './project-tree.js';

const ENTRY = /^- \*\*(?<key>[^*]+)\*\*: (?<citation>.+)$/u;

/** Entries of engine/SOURCES.md in order; lists elsewhere in the file would be read too, so it has none. */
export function bibliography(): readonly { readonly key: string; readonly citation: string; readonly line: number }[] {
  return readProjectFile('engine/SOURCES.md').split('\n').flatMap((text, i) => {
    const found = ENTRY.exec(text)?.groups;
    return found ? [{ key: found['key']!, citation: found['citation']!, line: i + 1 }] : [];
  });
}
