import { meanings, unclear, type Intent } from './intent.js';

/** "/crop kale", "/crop@name_bot kale": a word after a slash, what hangs on it, and the rest. */
const SLASH = /^\s*\/([a-z]+)(\S*)(?:\s+([\s\S]*\S))?\s*$/i;
/** The name that a chat program may add. */
const BOT_NAME = /^(?:@\w+)?$/;
/** "start A-b_9", "join abcd1234": a code comes with these, and nothing in a code is ever a temperature. */
const WITH_CODE = /^\s*(start|join)\b\W*(?=\S*[\d_])\S+\s*$/i;

/** What a command means: the same words typed plainly (`{}`: what follows it), or what it means alone. */
const PLAINLY: Readonly<Record<string, { readonly alone: string | Intent; readonly followed?: string }>> = {
  tonight: { alone: 'tonight', followed: '{}' },
  week: { alone: 'this week?' },
  crop: { alone: unclear('which-crop'), followed: '{}?' },
  done: { alone: 'done', followed: '{}' },
  reading: { alone: unclear('which-reading'), followed: '{}' },
  settings: { alone: 'settings', followed: '{}' },
  help: { alone: 'help' },
  stop: { alone: 'stop' },
};

/** What stands by itself where the words that follow the command are not understood. */
const ENOUGH_ALONE: ReadonlySet<string> = new Set(['tonight', 'settings']);
/** A number after any other command is a slip, and no temperature; "/done covered, 31 inside" tells a deed with it. */
const MAY_STORE: Readonly<Record<string, (meant: Intent) => boolean>> = { reading: () => true, done: ({ also }) => also !== undefined };
const stores = (intent: Intent): boolean => meanings(intent).some(({ kind }) => kind === 'reading' || kind === 'fix');

/** A message that begins with a command, as a chat program offers it; null for any other. */
export function command(text: string, understood: (plain: string) => Intent): Intent | null {
  const coded = WITH_CODE.exec(text)?.[1]?.toLowerCase();
  if (coded !== undefined) return coded === 'start' ? { kind: 'start' } : unclear('what', { word: text.trim() });
  const [, written = '', hangsOn = '', rest] = SLASH.exec(text) ?? [];
  if (written === '') return /^\s*\/\S/.test(text) ? unclear('what', { word: text.trim() }) : null;
  const name = written.toLowerCase();
  if (name === 'start') return { kind: 'start' };
  const unknown = unclear('what', { word: `/${written}${hangsOn}` });
  if (!BOT_NAME.test(hangsOn)) return unknown;
  const meant = plainly(name, rest, understood);
  return stores(meant) && MAY_STORE[name]?.(meant) !== true ? unknown : meant;
}

function plainly(name: string, rest: string | undefined, understood: (plain: string) => Intent): Intent {
  const plain = PLAINLY[name];
  if (plain === undefined) return understood(rest === undefined ? name : `${name} ${rest}`);
  if (rest === undefined || plain.followed === undefined) return typeof plain.alone === 'string' ? understood(plain.alone) : plain.alone;
  const meant = understood(plain.followed.replace('{}', () => rest));
  if (meant.kind !== 'unclear' || meant.asks !== 'what') return meant;
  if (name === 'crop') return unclear('which-crop', { word: rest });
  return ENOUGH_ALONE.has(name) ? understood(name) : meant;
}
