import { normalCdf, normalDensity } from '../chance/normal.js';

/** One action against one event: act for `cost`, or lose `loss` when the low falls below the threshold. */
export interface WaitingCase {
  readonly meanK: number;
  readonly thresholdK: number;
  readonly sdNowK: number;
  readonly sdLaterK: number;
  readonly cost: number;
  readonly loss: number;
}

const INTEGRATION_STEPS = 4000;
const INTEGRATION_WIDTH = 8;

/**
 * What waiting for the next forecast is worth: expected loss when deciding now, less that when deciding with the later forecast.
 * Units: K, money.
 * Valid: the later spread must be smaller than the present one.
 * Outside: throws RangeError.
 * Source: expected value of sample information, preposterior analysis (Katz1982 idea), later mean ~ N(mean, now^2 - later^2).
 */
export function worthOfWaiting(input: WaitingCase): { lossNow: number; lossLater: number; worth: number } {
  if (!(input.sdLaterK > 0 && input.sdLaterK < input.sdNowK)) throw new RangeError(`later spread ${input.sdLaterK} K: expected more than 0 and less than the present ${input.sdNowK} K`);
  const lossFor = (meanK: number, sdK: number): number => Math.min(input.cost, input.loss * normalCdf((input.thresholdK - meanK) / sdK));
  const lossNow = lossFor(input.meanK, input.sdNowK);
  const sdOfMeanK = Math.sqrt(input.sdNowK ** 2 - input.sdLaterK ** 2);
  const width = (2 * INTEGRATION_WIDTH) / INTEGRATION_STEPS;
  let lossLater = 0;
  for (let i = 0; i < INTEGRATION_STEPS; i += 1) {
    const z = -INTEGRATION_WIDTH + (i + 0.5) * width;
    lossLater += normalDensity(z) * width * lossFor(input.meanK + sdOfMeanK * z, input.sdLaterK);
  }
  return { lossNow, lossLater, worth: lossNow - lossLater };
}
