import { withoutTokens } from './without-tokens.js';

/** Fields that never go into a log, however deep: what growers wrote and where they live. */
const NEVER = new Set(['latitude', 'longitude', 'text', 'html', 'caption']);
const TAKEN_OUT = '[taken out]';
const DEEPEST = 6;

/** Fields as they may be logged: errors as data with their causes, no tokens, nothing of what growers wrote. */
export function logFields(fields: Readonly<Record<string, unknown>>): Record<string, unknown> {
  return plainRecord(fields, [fields]);
}

const plainRecord = (record: object, above: readonly object[]): Record<string, unknown> =>
  Object.fromEntries(Object.entries(record).map(([name, value]) => [withoutTokens(name), NEVER.has(name) ? TAKEN_OUT : plain(value, above)]));

function plain(value: unknown, above: readonly object[]): unknown {
  if (typeof value === 'string') return withoutTokens(value);
  if (typeof value === 'bigint' || typeof value === 'symbol' || typeof value === 'function') return withoutTokens(String(value));
  if (typeof value !== 'object' || value === null) return value;
  if (above.includes(value) || above.length > DEEPEST) return '[deeper]';
  const within = [...above, value];
  if (value instanceof Error) return plainError(value, within);
  if (Array.isArray(value)) return value.map((item) => plain(item, within));
  if (value instanceof URL || value instanceof Date) return withoutTokens(String(value));
  return plainRecord(value, within);
}

/** What tells why it failed. Other fields of an error stay out: a failed call carries what was to be sent. */
function plainError(error: Error, within: readonly object[]): Record<string, unknown> {
  const more = error as { code?: unknown; error?: unknown; errors?: unknown };
  const parts: readonly (readonly [string, unknown])[] = [['type', error.name], ['message', error.message], ['code', more.code], ['stack', error.stack], ['cause', error.cause], ['error', more.error], ['errors', more.errors]];
  return Object.fromEntries(parts.filter(([, value]) => value !== undefined).map(([name, value]) => [name, plain(value, within)]));
}
