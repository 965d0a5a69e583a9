import { existsSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { importsOf, type ModuleImport } from './module-imports.js';
import { allModules, modulesOf, urlOf } from './project-tree.js';

/** Imports of these modules that the rule does not allow, readable. */
const offenders = (paths: readonly string[], allowed: (found: ModuleImport) => boolean): readonly string[] =>
  paths.flatMap(importsOf).filter((found) => !allowed(found)).map(({ where, written }) => `${where} imports ${written}`);

const isIn = (path: string, folder: string): boolean => path.startsWith(`${folder}/`);
const ENGINE_DOOR = 'engine/index.ts';
/** `bot/features/evening` of a file in that folder. */
const featureOf = (path: string): string => path.split('/').slice(0, 3).join('/');

describe('import directions', () => {
  it('engine imports engine alone, and zod in engine/greenhouse', () => {
    expect(offenders(modulesOf('engine'), ({ from, target }) => isIn(target, 'engine') || (target === 'zod' && isIn(from, 'engine/greenhouse')))).toEqual([]);
  });

  it('inside the engine nobody goes through its table of contents', () => {
    expect(offenders(modulesOf('engine'), ({ target }) => target !== ENGINE_DOOR)).toEqual([]);
  });

  it('bot reaches the engine through engine/index.ts alone, also for types', () => {
    expect(offenders(modulesOf('bot'), ({ target }) => !isIn(target, 'engine') || target === ENGINE_DOOR)).toEqual([]);
  });

  it('features use ports, text, language, the engine and their own folder; of other features types alone', () => {
    const allowed = ({ from, target, typeOnly }: ModuleImport): boolean =>
      target === 'bot/ports.ts' ||
      target === 'bot/chat.ts' ||
      target === ENGINE_DOOR ||
      isIn(target, 'bot/text') ||
      isIn(target, 'bot/language') ||
      isIn(target, featureOf(from)) ||
      (typeOnly && isIn(target, 'bot/features'));
    expect(offenders(modulesOf('bot').filter((path) => isIn(path, 'bot/features')), allowed)).toEqual([]);
  });

  it('language makes no dialogue: it knows words, the engine and packages', () => {
    const allowed = ({ target, isOurs }: ModuleImport): boolean => !isOurs || isIn(target, 'bot/language') || target === ENGINE_DOOR;
    expect(offenders(modulesOf('bot').filter((path) => isIn(path, 'bot/language')), allowed)).toEqual([]);
  });

  it('text speaks of what features and language found, by their types alone', () => {
    const allowed = ({ target, isOurs, typeOnly }: ModuleImport): boolean => !isOurs || isIn(target, 'bot/text') || target === ENGINE_DOOR || typeOnly;
    expect(offenders(modulesOf('bot').filter((path) => isIn(path, 'bot/text')), allowed)).toEqual([]);
  });

  it.each(['bot/channels', 'bot/store', 'bot/weather'])('%s stands behind a port: no feature, no words, no other room behind a port', (room) => {
    const closed = ['bot/features', 'bot/text', 'bot/language', 'bot/channels', 'bot/store', 'bot/weather'].filter((other) => other !== room);
    expect(offenders(modulesOf('bot').filter((path) => isIn(path, room)), ({ target }) => !closed.some((other) => isIn(target, other)))).toEqual([]);
  });

  it('nothing outside tests imports tests', () => {
    expect(offenders(allModules().filter((path) => !isIn(path, 'tests')), ({ target }) => !isIn(target, 'tests'))).toEqual([]);
  });

  it('our own modules are imported with .js, and exist', () => {
    expect(offenders(allModules(), ({ isOurs, written, target }) => !isOurs || /\.(?:json|cjs|mjs)$/u.test(written) || (written.endsWith('.js') && existsSync(urlOf(target))))).toEqual([]);
  });
});
