import { parseArgs } from 'node:util';
import fc from 'fast-check';
import { CROP_WORDS } from '../../bot/conversation.js';
import { understand } from '../../bot/language/understand.js';
import { wrongWith } from './never.js';
import { strangeMessage } from './strange-messages.js';

/**
 * Throws strange messages at the language room: `node --import tsx tests/soak/language-fuzz.ts [--messages N] [--seed N]`.
 * Ends with status 1 where one crashes, stores what it must not, or where the slowest hundredth takes too long.
 */
const { values } = parseArgs({ options: { messages: { type: 'string', default: '200000' }, seed: { type: 'string', default: '1' } } });
const wanted = Number(values.messages);
const seed = Number(values.seed);
const AT_ONCE = 5000;
const SLOWEST_HUNDREDTH_MS = 20;
const SHOWN = 20;
const JANUARY_S = 1_768_500_000;

const tookMs: number[] = [];
const faults: string[] = [];
const kinds = new Map<string, number>();

function tell(text: string, units: 'C' | 'F'): void {
  const startMs = performance.now();
  try {
    const intent = understand({ text, atS: JANUARY_S, zone: 'America/New_York', units, crops: CROP_WORDS });
    tookMs.push(performance.now() - startMs);
    const wrong = wrongWith(text, intent);
    if (wrong !== null) faults.push(`${wrong}: ${JSON.stringify(text)} [${units}] ${JSON.stringify(intent)}`);
    kinds.set(intent.kind, (kinds.get(intent.kind) ?? 0) + 1);
  } catch (error) {
    faults.push(`crash: ${JSON.stringify(text)} [${units}] ${String(error)}`);
  }
}

for (let done = 0; done < wanted; done += AT_ONCE) {
  const texts = fc.sample(strangeMessage, { numRuns: Math.min(AT_ONCE, wanted - done), seed: seed + done });
  texts.forEach((text, at) => tell(text, at % 2 === 0 ? 'F' : 'C'));
}

tookMs.sort((a, b) => a - b);
const at = (share: number): number => tookMs[Math.min(tookMs.length - 1, Math.floor(share * tookMs.length))] ?? 0;
console.log(`${wanted} messages, seed ${seed}: ${faults.length} faults; ${at(0.5).toFixed(2)} ms in the middle, ${at(0.99).toFixed(2)} ms at the slowest hundredth, ${at(1).toFixed(1)} ms at most`);
console.log([...kinds].sort((a, b) => b[1] - a[1]).map(([kind, count]) => `${kind} ${count}`).join(', '));
for (const fault of faults.slice(0, SHOWN)) console.log(fault);
process.exitCode = faults.length > 0 || at(0.99) > SLOWEST_HUNDREDTH_MS ? 1 : 0;
