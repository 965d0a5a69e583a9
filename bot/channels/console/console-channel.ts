import { randomUUID } from 'node:crypto';
import { createInterface } from 'node:readline';
import type { Readable, Writable } from 'node:stream';
import type { Channel, ChatAddress, Inbound, Outgoing } from '../../chat.js';
import type { Clock } from '../../ports.js';

export interface ConsoleStreams {
  readonly input: Readable;
  readonly output: Writable;
}

export interface ConsoleChannelOptions extends ConsoleStreams {
  readonly address: ChatAddress;
  readonly clock: Clock;
  /** What the console says to itself at the start, so that the first answer is there at once. */
  readonly firstWords: string;
  /** Stands under the first answer. */
  readonly greeting: string;
  readonly farewell: string;
  /** Puts a file that goes with a message where its reader finds it; the line that says where. */
  readonly keepFile: (message: Outgoing) => Promise<string | null>;
  /** Whether an answer is still to come. */
  readonly isUnsettled: () => Promise<boolean>;
  /** What is done with words that are not meant for the assistant; false for all others. */
  readonly takesOver?: (text: string) => Promise<boolean>;
  /** The grower has left. */
  readonly left: () => void;
}

const LEAVE = new Set(['bye', 'good night', 'goodnight']);
const PROMPT = '> ';
const LOOK_AGAIN_MS = 20;

/** A conversation by lines: answers come in the order of the questions, and what comes unasked stands between. */
export function consoleChannel(options: ConsoleChannelOptions): Channel {
  const { input, output, address, clock, isUnsettled } = options;
  const write = (text: string): void => void output.write(text);
  let isPrompting = false;
  const prompt = (): void => {
    write(PROMPT);
    isPrompting = true;
  };
  const answered = async (signal: AbortSignal): Promise<void> => {
    while (!signal.aborted && (await isUnsettled())) await new Promise((resolve) => setTimeout(resolve, LOOK_AGAIN_MS));
  };
  const said = (text: string): Inbound => ({ ...address, update: randomUUID(), isGroup: false, sender: address.chat, receivedAtS: Math.floor(clock.nowS()), content: { kind: 'text', text, forwarded: false } });
  return {
    name: 'console',
    async listen(handOver, signal) {
      await handOver(said(options.firstWords));
      await answered(signal);
      write(`${options.greeting}\n`);
      if (signal.aborted) return;
      prompt();
      // Opened only when it is read: lines that come before would be lost.
      const lines = createInterface({ input, terminal: false });
      const stop = (): void => lines.close();
      signal.addEventListener('abort', stop, { once: true });
      for await (const line of lines) {
        if (signal.aborted) break;
        isPrompting = false;
        const text = line.trim();
        if (LEAVE.has(text.toLowerCase())) break;
        if (text !== '' && !(await options.takesOver?.(text))) await handOver(said(text));
        await answered(signal);
        prompt();
      }
      stop();
      write(`${options.farewell}\n`);
      options.left();
    },
    async send(_to, message) {
      const kept = await options.keepFile(message);
      write(`${isPrompting ? '\n' : ''}${message.text}\n${kept === null ? '' : `${kept}\n`}`);
      if (isPrompting) prompt();
      return { kind: 'sent', message: randomUUID() };
    },
    acknowledge: () => Promise.resolve(),
  };
}
