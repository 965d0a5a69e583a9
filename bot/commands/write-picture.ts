import { writeFile } from 'node:fs/promises';
import type { EveningPlan, Greenhouse } from '../../engine/index.js';
import { checkGlyphs } from '../chart/glyph-check.js';
import type { NightPicture } from '../chart/night-picture.js';
import { nightPng } from '../chart/night-png.js';
import { pictureOfPlan } from '../chart/picture-of-plan.js';
import { pngRenderer } from '../chart/png-renderer.js';
import type { Advisory } from '../features/evening/advisory.js';
import { InputError } from './input-error.js';

/** The picture of an evening as a PNG file. */
export async function writePicture(path: string, { plan, advisory }: { readonly plan: EveningPlan; readonly advisory: Advisory }, house: { readonly greenhouse: Greenhouse; readonly zone: string }): Promise<void> {
  const png = await drawn(pictureOfPlan(plan, { ...house, advisory }));
  try {
    await writeFile(path, png);
  } catch (error) {
    throw new InputError(`--picture ${path}: expected a file that can be written, got ${(error as NodeJS.ErrnoException).code ?? String(error)}. Check the path.`);
  }
}

async function drawn(picture: NightPicture): Promise<Buffer> {
  const renderer = pngRenderer();
  try {
    await checkGlyphs(renderer.renderPng);
    return await nightPng(picture, renderer.renderPng);
  } finally {
    await renderer.close();
  }
}
