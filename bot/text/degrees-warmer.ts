import { kelvinToFahrenheitDegrees } from '../../engine/index.js';
import type { TempUnits } from './temperature.js';

/** Less than this shows on no thermometer (project estimate). */
const NOTHING_BELOW_K = 0.1;

/** "2.1 degrees warmer, 1.4 to 2.8": a change of a temperature with its range; a range that crosses zero is said plainly. */
export function degreesWarmer({ meanK, q10K, q90K }: { meanK: number; q10K: number; q90K: number }, units: TempUnits): string {
  if (Math.abs(meanK) < NOTHING_BELOW_K) return 'the same';
  const way = meanK > 0 ? 'warmer' : 'colder';
  const size = (changeK: number): number => (Math.round(10 * (units === 'F' ? kelvinToFahrenheitDegrees(changeK) : changeK)) / 10) * Math.sign(meanK);
  const [low, high] = [size(q10K), size(q90K)].sort((a, b) => a - b) as [number, number];
  const range = low < 0 ? `up to ${high}, or none` : `${low} to ${high}`;
  return `${size(meanK)} ${size(meanK) === 1 ? 'degree' : 'degrees'} ${way}, ${range}`;
}
