/** An error of unknown size: Student-t about zero. */
export interface StudentError {
  readonly scaleK: number;
  readonly degreesOfFreedom: number;
}

/** Student-t with more degrees of freedom is a bell for every purpose. */
const AS_GOOD_AS_A_BELL = 100;

/**
 * The sum of an error whose size was estimated and of one whose size is known: only the first has the heavy tails of an estimate.
 * Units: K.
 * Valid: scale above 0, standard deviation of 0 or more, a whole number of degrees of freedom.
 * Outside: not checked.
 * Source: Satterthwaite1946: variances add, degrees of freedom are those of a chi-square with the same two moments; never more than a hundred.
 */
export function summedError(estimated: StudentError, knownSdK: number): StudentError {
  const estimatedShare = estimated.scaleK ** 2 / (estimated.scaleK ** 2 + knownSdK ** 2);
  return {
    scaleK: Math.hypot(estimated.scaleK, knownSdK),
    degreesOfFreedom: Math.min(Math.max(AS_GOOD_AS_A_BELL, estimated.degreesOfFreedom), Math.round(estimated.degreesOfFreedom / estimatedShare ** 2)),
  };
}
