const ARTICLE = /^the /u;
/** Where none is called so: the second of the beds in their order. */
const COUNTED_BED = /\bbed (?:number |no\.? |# ?)?(\d)\b/gu;

/** Beds of these names that stand in the words; null when none does. */
export function bedsNamed(words: string, names: readonly string[]): readonly string[] | null {
  const said = words.toLowerCase();
  const named = names.filter((name) => said.includes(name.toLowerCase().replace(ARTICLE, '')));
  if (named.length > 0) return named;
  const counted = [...said.matchAll(COUNTED_BED)].flatMap(([, number]) => names[Number(number) - 1] ?? []);
  return counted.length === 0 ? null : counted;
}
