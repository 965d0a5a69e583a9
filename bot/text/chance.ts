/** Chances as counts of nights like this one, never as percentages (fixed table of this project). */
export function inTen(probability: number): string {
  if (probability < 0.01) return 'next to none';
  if (probability < 0.05) return 'fewer than 1 in 20';
  if (probability > 0.9) return '9+ in 10';
  return `${Math.max(1, Math.round(probability * 10))} in 10`;
}

export type ChanceClass = 'safe' | 'very unlikely' | 'unlikely' | 'possible' | 'even odds' | 'likely' | 'almost sure';

/** The class of a chance, for deciding whether a new message is worth sending. */
export function chanceClass(probability: number): ChanceClass {
  if (probability < 0.01) return 'safe';
  if (probability < 0.05) return 'very unlikely';
  if (probability < 0.15) return 'unlikely';
  if (probability < 0.35) return 'possible';
  if (probability < 0.65) return 'even odds';
  return probability <= 0.9 ? 'likely' : 'almost sure';
}

/** "3 in 10 nights", ready for "... like this". */
export const nights = (probability: number): string => (probability < 0.01 ? 'almost no nights' : `${inTen(probability)} nights`);
