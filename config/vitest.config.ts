import { defineConfig } from 'vitest/config';
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';

export default defineConfig({
  test: {
    root: fileURLToPath(new URL('..', import.meta.url)),
    globalSetup: 'tests/fixtures/plain-javascript.ts',
    testTimeout: 60_000,
    hookTimeout: 60_000,
    passWithNoTests: false,
    // One more than there are cores: some tests wait for a clock or for a process to end.
    maxWorkers: availableParallelism() + 1,
    // No test leaves a module changed (none mocks, none sets the environment; one puts back what it cut), so they are loaded once for each core: loading took longer than most tests.
    isolate: false,
  },
});
