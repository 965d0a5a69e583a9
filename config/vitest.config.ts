import { defineConfig } from 'vitest/config';
import { fileURLToPath } from 'node:url';

export default defineConfig({
  test: {
    root: fileURLToPath(new URL('..', import.meta.url)),
    globalSetup: 'tests/fixtures/plain-javascript.ts',
    testTimeout: 60_000,
    hookTimeout: 60_000,
    passWithNoTests: false,
    // The default leaves one core idle: of two that is half.
    maxWorkers: '100%',
    // No test changes what its modules hold (none mocks, none sets the environment), so they are loaded once for each core: loading took longer than most tests.
    isolate: false,
  },
});
