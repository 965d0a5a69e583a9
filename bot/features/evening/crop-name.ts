import { cropById } from '../../../engine/index.js';

/** The crop's plain name; the id where the tables do not know it. */
export const cropName = (id: string): string => cropById(id)?.commonName.split(' (')[0] ?? id;
