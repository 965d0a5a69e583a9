import { fileURLToPath } from 'node:url';

/** Family name inside the font files. */
export const FONT_FAMILY = 'DejaVu Sans';

/** The fonts of the picture, from their package: the machine need not have any. */
export const FONT_FILES = {
  regular: fileURLToPath(import.meta.resolve('dejavu-fonts-ttf/ttf/DejaVuSans.ttf')),
  bold: fileURLToPath(import.meta.resolve('dejavu-fonts-ttf/ttf/DejaVuSans-Bold.ttf')),
} as const;

export type FontWeight = keyof typeof FONT_FILES;
