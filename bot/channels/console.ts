import { createInterface } from 'node:readline';
import type { Readable, Writable } from 'node:stream';

export interface ConsoleChannel {
  readonly input: Readable;
  readonly output: Writable;
  readonly prompt: string;
}

const LEAVE = new Set(['bye', 'good night', 'goodnight']);

/** Reads lines until the input ends or the grower says good-bye; answers are written in the order of the questions. */
export async function talk(channel: ConsoleChannel, answer: (text: string) => Promise<string>): Promise<void> {
  const lines = createInterface({ input: channel.input, terminal: false });
  const say = (text: string): void => void channel.output.write(text);
  say(channel.prompt);
  for await (const line of lines) {
    const text = line.trim();
    if (LEAVE.has(text.toLowerCase())) break;
    if (text !== '') say(`${await answer(text)}\n`);
    say(channel.prompt);
  }
  lines.close();
}
