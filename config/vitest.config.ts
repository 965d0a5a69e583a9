import { configDefaults, defineConfig } from 'vitest/config';
import { fileURLToPath } from 'node:url';

/** Numbers and words in, numbers and words out: these files may share what they load, which is most of their time. */
const SHARING = ['physics', 'published', 'engine', 'bot/language', 'bot/describe', 'bot/text'].map((room) => `tests/${room}/**/*.test.ts`);

export default defineConfig({
  test: {
    root: fileURLToPath(new URL('..', import.meta.url)),
    testTimeout: 60_000,
    hookTimeout: 60_000,
    passWithNoTests: false,
    // The default leaves one core idle: of two that is half.
    maxWorkers: '100%',
    projects: [
      { extends: true, test: { name: 'numbers', include: SHARING, isolate: false } },
      { extends: true, test: { name: 'world', include: ['tests/**/*.test.ts'], exclude: [...configDefaults.exclude, ...SHARING] } },
    ],
  },
});
