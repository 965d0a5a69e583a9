import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync } from 'node:fs';
import { createInterface } from 'node:readline';
import { ROOT, scriptWords } from '../fixtures/script.js';

/** The whole program. */
export const THE_PROGRAM = ['bot/main.ts', 'run'] as const;

export interface Ended {
  readonly code: number | null;
  readonly signal: NodeJS.Signals | null;
  readonly atMs: number;
}

/** The assistant as a process of its own. */
export interface AssistantProcess {
  /** What it wrote on standard error, line by line. */
  readonly errors: readonly string[];
  readonly ended: Promise<Ended>;
  readonly isOver: () => boolean;
  /** Memory that it holds, bytes; 0 when it is over. */
  residentBytes(): number;
  kill(signal: NodeJS.Signals): Promise<Ended>;
}

export function startAssistant([script, ...words]: readonly [string, ...string[]], settings: Readonly<Record<string, string>>): AssistantProcess {
  const others = Object.entries(process.env).filter(([name]) => !name.startsWith('DUSKWARD_') && !name.startsWith('VITEST'));
  const child = spawn(process.execPath, [...scriptWords(script), ...words], { cwd: ROOT, env: { ...Object.fromEntries(others), ...settings }, stdio: ['ignore', 'ignore', 'pipe'] });
  const errors: string[] = [];
  createInterface({ input: child.stderr }).on('line', (line) => errors.push(line));
  let isOver = false;
  const ended = once(child, 'close').then(([code, signal]): Ended => {
    isOver = true;
    return { code: code as number | null, signal: signal as NodeJS.Signals | null, atMs: performance.now() };
  });
  return {
    errors,
    ended,
    isOver: () => isOver,
    residentBytes: () => (isOver ? 0 : residentBytes(child.pid!)),
    kill: (signal) => {
      child.kill(signal);
      return ended;
    },
  };
}

/** As Linux tells; 0 where it does not. */
function residentBytes(pid: number): number {
  try {
    const kB = /^VmRSS:\s+(\d+) kB$/mu.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1];
    return Number(kB ?? 0) * 1024;
  } catch {
    return 0;
  }
}
