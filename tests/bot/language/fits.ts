const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> => typeof value === 'object' && value !== null && !Array.isArray(value);

/** Growers' readings are given to hundredths or, by hand, to tenths. */
const ROUNDED_C = 0.06;

/** Whether the intent holds all that is expected, and no second intent that is not: lists must be of one length. */
export function fits(intent: unknown, expected: unknown): boolean {
  if (Array.isArray(expected)) return Array.isArray(intent) && intent.length === expected.length && expected.every((one, at) => fits(intent[at], one));
  if (typeof expected === 'number') return typeof intent === 'number' && Math.abs(intent - expected) <= ROUNDED_C;
  if (!isRecord(expected)) return Object.is(intent, expected);
  if (!isRecord(intent)) return false;
  if ('also' in intent && !('also' in expected)) return false;
  return Object.entries(expected).every(([key, value]) => fits(intent[key], value));
}

/** Whether a temperature would be stored that the message did not hold: the worst that can happen. */
export function storesWrongly(intent: unknown, expected: unknown): boolean {
  const said = numbers(expected);
  return numbers(intent).some((c) => !said.some((one) => Math.abs(one - c) <= ROUNDED_C));
}

function numbers(intent: unknown): readonly number[] {
  if (!isRecord(intent)) return [];
  const own = intent['kind'] === 'reading' && Array.isArray(intent['readings']) ? intent['readings'].map((reading: unknown) => (isRecord(reading) ? Number(reading['c']) : Number.NaN)) : intent['kind'] === 'fix' && 'c' in intent ? [Number(intent['c'])] : [];
  return [...own, ...(Array.isArray(intent['also']) ? intent['also'].flatMap(numbers) : [])];
}
