const COMPOSED: readonly (readonly [RegExp, string])[] = [
  [/[’‘ʼ´`′]/g, "'"],
  [/[“”]/g, '"'],
  [/[\u00a0\u2007\u2009\u202f]/g, ' '],
  [/[ºª˚∘]/g, '°'],
  [/℃/g, '°c'],
  [/℉/g, '°f'],
  // Phones write a minus as any of these. Which of them is a sign is for the grammar to say.
  [/[−–—‒‐‑﹣－]/g, '-'],
];

/** The message in lower case with one form for each quote, dash, blank and degree sign, and without accents. */
export function plainText(text: string): string {
  const oneForm = COMPOSED.reduce((sofar, [found, instead]) => sofar.replace(found, instead), text);
  return oneForm.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();
}
