/** Meeus1998 eq. 16.4, degrees: the lift that suncalc adds to the geometric altitude. */
export function refractionDeg(geometricDeg: number): number {
  const h = Math.max(0, geometricDeg);
  return 1.02 / 60 / Math.tan(((h + 10.3 / (h + 5.11)) * Math.PI) / 180);
}
