import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Outgoing } from '../../chat.js';

const PICTURE_NAME = 'picture.png';

/** The newest picture in the folder, in the place of the one before; the line that says so. Null for a message without one. */
export const keptIn =
  (folder: string, words: { readonly picture: (path: string) => string }) =>
  async ({ picturePng }: Outgoing): Promise<string | null> => {
    if (picturePng === undefined) return null;
    const path = join(folder, PICTURE_NAME);
    await mkdir(folder, { recursive: true });
    await writeFile(path, Buffer.from(picturePng, 'base64'));
    return words.picture(path);
  };
