import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Outgoing } from '../../chat.js';

const PICTURE_NAME = 'picture.png';

interface KeptWords {
  readonly picture: (path: string) => string;
  readonly document: (path: string) => string;
}

/** The newest picture and documents in the folder, in the place of those before; the lines that say so. Null for a message without any. */
export const keptIn =
  (folder: string, words: KeptWords) =>
  async ({ picturePng, documents = [] }: Outgoing): Promise<string | null> => {
    const files = [
      ...(picturePng === undefined ? [] : [{ name: PICTURE_NAME, content: Buffer.from(picturePng, 'base64'), line: words.picture }]),
      ...documents.map(({ name, text }) => ({ name, content: Buffer.from(text), line: words.document })),
    ];
    if (files.length === 0) return null;
    await mkdir(folder, { recursive: true });
    for (const { name, content } of files) await writeFile(join(folder, name), content);
    return files.map(({ name, line }) => line(join(folder, name))).join('\n');
  };
