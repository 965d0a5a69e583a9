import { afterAll, describe, expect, it } from 'vitest';
import { nightThreads } from '../../bot/threads/night-threads.js';
import { outsideGsm } from '../bot/text/gsm.js';
import { openTalk, type ConsoleTalk } from './console-talk.js';
import { consoleTranscripts, type ConsoleLine, type ConsoleTranscript } from './console-transcript.js';

const INVITE = /"join ([a-z0-9]{8})"/u;
const PATTERN = /^\/(.+)\/$/u;
/** They share the threads: each waits for the evenings of all others. */
const LONGEST_MS = 240_000;
const threads = nightThreads();
afterAll(() => threads.close());

function expectGoodWords(text: string): void {
  expect(outsideGsm(text), text).toEqual([]);
  expect(text, text).not.toMatch(/undefined|NaN|\[object|null/u);
}

const isHeard = (heard: string, words: string): boolean => {
  const pattern = PATTERN.exec(words)?.[1];
  return pattern === undefined ? heard.includes(words) : new RegExp(pattern, 'u').test(heard);
};

function check(line: Extract<ConsoleLine, { words: string }>, talk: ConsoleTalk, where: string): void {
  const heard = talk.heard(line.person);
  expect(isHeard(heard, line.words), `${where}: ${line.kind === 'hears' ? 'expected' : 'did not expect'} "${line.words}" in:\n${heard}`).toBe(line.kind === 'hears');
}

async function play({ lines }: ConsoleTranscript): Promise<void> {
  const first = lines.find((line) => line.kind === 'says');
  if (first === undefined) throw new Error('somebody must say something first');
  const house = lines.find((line) => line.kind === 'house')?.fields ?? null;
  const talk = await openTalk({ house, firstWords: first.text, threads, people: lines.some((line) => line.kind === 'says' && line.person === 2) ? 2 : 1 });
  let code = '';
  try {
    for (const line of lines) {
      if (line.kind === 'hears' || line.kind === 'hears-not') check(line, talk, `line ${line.at}`);
      else if (line.kind === 'clock') {
        await talk.types(1, line.text);
        expect(talk.heard(1), `line ${line.at}: the clock must move`).toMatch(/^-- .+ --$/mu);
      } else if (line.kind === 'says' && line !== first) await talk.types(line.person, line.text.replace('{code}', code));
      for (const person of [1, 2] as const) expectGoodWords(talk.heard(person));
      code = INVITE.exec(talk.heard(1))?.[1] ?? code;
    }
    expect(talk.faults).toEqual([]);
  } finally {
    await talk.close();
  }
}

const ALL = consoleTranscripts();

describe('conversations on the console', () => {
  it('are many', () => {
    expect(ALL.length).toBeGreaterThanOrEqual(12);
  });

  it.concurrent.each(ALL.map((transcript) => [transcript.name, transcript] as const))('%s', (_name, transcript) => play(transcript), LONGEST_MS);
});
