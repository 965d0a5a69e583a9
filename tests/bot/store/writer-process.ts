import { spawn } from 'node:child_process';
import { scriptWords } from '../../fixtures/script.js';

export interface WriterProcess {
  /** Resolves with the first whole line that begins with the word; rejects when the process ends without one. */
  line(word: string): Promise<string>;
  /** Resolves when so many whole lines were written, or the process has ended. */
  lines(count: number): Promise<void>;
  /** kill -9; resolves when the process is gone and all that it wrote has been read. */
  kill(): Promise<readonly string[]>;
  /** All whole lines, once the process has ended of itself. */
  readonly ended: Promise<readonly string[]>;
}

/** Starts writer.ts as a process of its own. */
export const startWriter = (path: string, round: string, mode: 'write' | 'hold'): WriterProcess => startScript('writer.ts', path, round, mode);

/** Starts post-office.ts as a process of its own: the service has updates from this number on, up to the last. */
export const startPostOffice = (path: string, from: number, last: number): WriterProcess => startScript('post-office.ts', path, String(from), String(last));

function startScript(name: string, ...words: readonly string[]): WriterProcess {
  const child = spawn(process.execPath, [...scriptWords(`tests/bot/store/${name}`), ...words], { stdio: ['ignore', 'pipe', 'inherit'] });
  let output = '';
  const whenMore = new Set<() => void>();
  const tell = (): void => whenMore.forEach((look) => look());
  child.stdout.setEncoding('utf8').on('data', (chunk: string) => {
    output += chunk;
    tell();
  });
  // What comes after the last line break was cut off by the kill: it acknowledges nothing.
  const lines = (): readonly string[] => output.split('\n').slice(0, -1);
  let over = false;
  const ended = new Promise<readonly string[]>((resolve, reject) => {
    child.once('error', reject);
    child.once('close', () => {
      over = true;
      tell();
      resolve(lines());
    });
  });
  const when = (isSo: () => boolean): Promise<void> =>
    new Promise((resolve) => {
      const look = (): void => {
        if (!isSo() && !over) return;
        whenMore.delete(look);
        resolve();
      };
      whenMore.add(look);
      look();
    });
  return {
    ended,
    line: async (word) => {
      const find = (): string | undefined => lines().find((line) => line.startsWith(word));
      await when(() => find() !== undefined);
      const found = find();
      if (found === undefined) throw new Error(`expected the process to say "${word}", got: ${output}`);
      return found;
    },
    lines: (count) => when(() => lines().length >= count),
    kill: () => {
      child.kill('SIGKILL');
      return ended;
    },
  };
}
