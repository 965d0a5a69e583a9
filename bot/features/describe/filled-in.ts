import type { GreenhouseFile } from '../../../engine/index.js';
import type { DraftFile } from './state.js';

/** A whole file, with something that fits in place of what is not known yet, so that the rest can be checked and read back. */
export const filledIn = (file: DraftFile): GreenhouseFile => ({
  place: { latitude: 45, longitude: 0 },
  size: { width: 10, length: 20, height: 4 },
  layers: [{ film: 'standard' }, { film: 'standard' }],
  ...(Object.fromEntries(Object.entries(file).filter(([, value]) => value !== undefined)) as Partial<GreenhouseFile>),
});
