import { normalCdf, normalDensity } from '../chance/normal.js';
import { studentTCdf } from '../chance/student-t.js';
import { celsiusToKelvin, fahrenheitToCelsius, kelvinToFahrenheitDegrees } from '../units.js';
import { typingSlips } from './reading-gate-slips.js';

/** What may be behind a number that somebody typed. */
export type ExplanationKind = 'as-typed' | 'wrong-sign' | 'other-unit' | 'lost-point' | 'slip' | 'not-reset' | 'sunlit' | 'unusual';

export interface Explanation {
  readonly kind: ExplanationKind;
  /** The number that was meant, in the unit as typed, or in the other one for `other-unit`; null where no number follows: the sun, an unusual night. */
  readonly meant: number | null;
  /** What the place had by it; null where no number follows. */
  readonly tempK: number | null;
  readonly probability: number;
}

export type DegreeUnit = 'C' | 'F';

export interface TypedReading {
  readonly value: number;
  readonly unit: DegreeUnit;
  /** The unit stood beside the number. */
  readonly unitWritten?: boolean;
  readonly statistic: 'low' | 'now' | 'high';
  /** The sun was up when it was read. */
  readonly sunIsUp: boolean;
  /** How the thermometer hangs, where that was told. */
  readonly hangs?: 'sun' | 'shade';
}

/** What was expected of the place: Student-t with four degrees of freedom, the thermometer's own error in its scale. */
export interface ExpectedTemp {
  readonly meanK: number;
  readonly scaleK: number;
}

/** Priors of this project: shares of typed readings, scaled to one afterwards; `unusual` stands for all that has no name. */
const PRIORS = { asTyped: 0.94, wrongSign: 0.015, otherUnit: 0.015, lostPoint: 0.005, notReset: 0.01, unusual: 0.015, sunlit: 0.01 } as const;
const UNUSUAL_OVER_K = 60;
/** Two readings of the same mark differ by so much (prior of this project). */
const SAME_MARK_SD_K = 0.3;
/** A written unit is seldom the wrong one (prior of this project). */
const WRITTEN_UNIT_WRONG = 0.1;
/** Each further night that nobody reset it is half as likely (prior of this project). */
const FURTHER_NIGHT = 0.5;
const NIGHTS_NOT_RESET = 3;
/** Sun on a thermometer adds this much, evenly (prior of this project; several K from memory). */
const SUN_ADDS_K = { least: 2, most: 30 } as const;
/** A thermometer that hangs in the sun or in the shade, against one of which nothing was told (prior of this project). */
const HANGS: Readonly<Record<'sun' | 'shade', number>> = { sun: 3, shade: 0.3 };
const FREEDOM = 4;

/** Density of Student-t with four degrees of freedom in closed form. */
const density = (tempK: number, { meanK, scaleK }: ExpectedTemp): number => (0.375 * (1 + ((tempK - meanK) / scaleK) ** 2 / 4) ** -2.5) / scaleK;

/** Temperature of a number in a unit. Units: degrees C or F in, K out. Valid: any number. Outside: not applicable. Source: BIPM2019, NIST-SP811. */
export const typedTempK = (value: number, unit: DegreeUnit): number => celsiusToKelvin(unit === 'C' ? value : fahrenheitToCelsius(value));

const kelvinPer = (unit: DegreeUnit): number => 1 / (unit === 'C' ? 1 : kelvinToFahrenheitDegrees(1));

/**
 * Log-likelihood of a low on a thermometer that was not reset: the night was no colder than what it shows.
 * Units: K in, dimensionless out.
 * Valid: a scale above 0.
 * Outside: minus infinity where the chance is below the smallest number.
 * Source: a censored normal observation (definition).
 */
export const notResetLogLikelihood = (shownK: number, { meanK, scaleK }: ExpectedTemp): number => Math.log(normalCdf((meanK - shownK) / scaleK));

/**
 * What may be behind a typed number, likeliest first, with probabilities that sum to one.
 * Units: as typed, K; probabilities 0-1.
 * Valid: an expected temperature with a scale above 0; `lowsK` are the settled lows of the same thermometer on the nights before, the last first.
 * Outside: throws RangeError.
 * Source: Bayes' rule over the errors of hand-read thermometers with priors of this project; wrong units after Rhines2015, the idea of such checks after Durre2010.
 */
export function explanationsOf(reading: TypedReading, expected: ExpectedTemp, lowsK: readonly number[] = []): readonly Explanation[] {
  if (!(expected.scaleK > 0)) throw new RangeError(`expected a scale above 0 K, got ${expected.scaleK}`);
  const weighed = [...ofTheNumber(reading, expected), ...ofThermometer(reading, expected, lowsK)];
  const sum = weighed.reduce((total, { probability }) => total + probability, 0);
  return weighed.map((one) => ({ ...one, probability: one.probability / sum })).sort((a, b) => b.probability - a.probability);
}

/** Another number was meant. Weights are densities per degree as typed. */
function ofTheNumber({ value, unit, unitWritten }: TypedReading, expected: ExpectedTemp): readonly Explanation[] {
  const meaning = (kind: ExplanationKind, weight: number, meant: number, inUnit: DegreeUnit = unit): Explanation => {
    const tempK = typedTempK(meant, inUnit);
    return { kind, meant, tempK, probability: weight * kelvinPer(inUnit) * density(tempK, expected) };
  };
  const other = unit === 'C' ? 'F' : 'C';
  const hasPoint = !Number.isInteger(value);
  return [
    meaning('as-typed', PRIORS.asTyped, value),
    ...(value === 0 ? [] : [meaning('wrong-sign', PRIORS.wrongSign, -value)]),
    meaning('other-unit', PRIORS.otherUnit * (unitWritten === true ? WRITTEN_UNIT_WRONG : 1), value, other),
    // A degree as typed is a tenth of one as meant.
    ...(hasPoint || value === 0 ? [] : [meaning('lost-point', PRIORS.lostPoint / 10, value / 10)]),
    ...typingSlips(value).map(({ meant, chance }) => meaning('slip', chance, meant)),
  ];
}

/** The number is what the thermometer showed, and not what the place had. */
function ofThermometer(reading: TypedReading, expected: ExpectedTemp, lowsK: readonly number[]): readonly Explanation[] {
  const perDegree = kelvinPer(reading.unit);
  const tempK = typedTempK(reading.value, reading.unit);
  const nothing = { meant: null, tempK: null };
  const sunShare = reading.sunIsUp && reading.statistic !== 'high' ? PRIORS.sunlit * (reading.hangs === undefined ? 1 : HANGS[reading.hangs]) : 0;
  const { least, most } = SUN_ADDS_K;
  const chanceOfRise = studentTCdf((tempK - least - expected.meanK) / expected.scaleK, FREEDOM) - studentTCdf((tempK - most - expected.meanK) / expected.scaleK, FREEDOM);
  return [
    { kind: 'sunlit', ...nothing, probability: (sunShare * perDegree * chanceOfRise) / (most - least) },
    { kind: 'not-reset', meant: reading.value, tempK, probability: reading.statistic === 'low' ? notResetDensity(tempK, expected, lowsK) * perDegree : 0 },
    { kind: 'unusual', ...nothing, probability: (PRIORS.unusual * perDegree) / UNUSUAL_OVER_K },
  ];
}

/** It still shows the coldest of the last night, or of the last two or three, and this night was no colder. */
function notResetDensity(tempK: number, expected: ExpectedTemp, lowsK: readonly number[]): number {
  const marks = new Map<number, number>();
  for (let nights = 1; nights <= Math.min(NIGHTS_NOT_RESET, lowsK.length); nights += 1) {
    const coldestK = Math.min(...lowsK.slice(0, nights));
    if (!marks.has(coldestK)) marks.set(coldestK, PRIORS.notReset * FURTHER_NIGHT ** (nights - 1));
  }
  const atMark = [...marks].reduce((sum, [markK, prior]) => sum + (prior * normalDensity((tempK - markK) / SAME_MARK_SD_K)) / SAME_MARK_SD_K, 0);
  return atMark * Math.exp(notResetLogLikelihood(tempK, expected));
}
