import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';

export interface WriterProcess {
  /** Resolves with the first whole line that begins with the word; rejects when the process ends without one. */
  line(word: string): Promise<string>;
  /** kill -9; resolves when the process is gone and all that it wrote has been read. */
  kill(): Promise<readonly string[]>;
  /** All whole lines, once the process has ended of itself. */
  readonly ended: Promise<readonly string[]>;
}

/** Starts writer.ts as a process of its own. */
export function startWriter(path: string, round: string, mode: 'write' | 'hold'): WriterProcess {
  const script = fileURLToPath(new URL('writer.ts', import.meta.url));
  const child = spawn(process.execPath, ['--import', 'tsx', script, path, round, mode], { stdio: ['ignore', 'pipe', 'inherit'] });
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
  return {
    ended,
    line: (word) =>
      new Promise((resolve, reject) => {
        const look = (): void => {
          const found = lines().find((line) => line.startsWith(word));
          if (found !== undefined) resolve(found);
          else if (over) reject(new Error(`expected the writer to say "${word}", got: ${output}`));
          else return;
          whenMore.delete(look);
        };
        whenMore.add(look);
        look();
      }),
    kill: () => {
      child.kill('SIGKILL');
      return ended;
    },
  };
}
