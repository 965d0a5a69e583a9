import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const ROOT = new URL('../../', import.meta.url);

/** The rooms of the code; everything else in the project is a root file. */
export const ROOMS = ['engine', 'bot', 'tests', 'config'] as const;
export type Room = (typeof ROOMS)[number];

/** Installed, built, recorded, run-time or private to somebody's editor: not ours to judge. */
const NOT_SOURCE = new Set(['node_modules', 'dist', 'data', 'coverage', '.git', '.env', '.vscode', '.idea']);
const NOT_TEXT = /\.(?:png|gz|sqlite|ico|woff2?)$/u;

function filesUnder(folder: string): readonly string[] {
  return readdirSync(new URL(folder, ROOT), { withFileTypes: true })
    .flatMap((entry) => {
      const path = `${folder}${entry.name}`;
      return entry.isDirectory() ? filesUnder(`${path}/`) : [path];
    })
    .sort();
}

/** Every file of a room, by its path from the root. */
export const filesOf = (room: Room): readonly string[] => filesUnder(`${room}/`);

/** TypeScript of a room, declarations of other people's packages left out. */
export const modulesOf = (room: Room): readonly string[] => filesOf(room).filter((path) => path.endsWith('.ts') && !path.endsWith('.d.ts'));

export const allModules = (): readonly string[] => ROOMS.flatMap(modulesOf);

/** Every text file of the project that is ours. */
export function allTextFiles(): readonly string[] {
  return readdirSync(ROOT, { withFileTypes: true })
    .filter(({ name }) => !NOT_SOURCE.has(name))
    .flatMap((entry) => (entry.isDirectory() ? filesUnder(`${entry.name}/`) : [entry.name]))
    .filter((path) => !NOT_TEXT.test(path));
}

export const urlOf = (path: string): URL => new URL(path, ROOT);
export const readProjectFile = (path: string): string => readFileSync(fileURLToPath(urlOf(path)), 'utf8');
export const lineAt = (text: string, offset: number): number => text.slice(0, offset).split('\n').length;
