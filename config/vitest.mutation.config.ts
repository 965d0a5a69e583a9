import { fileURLToPath } from 'node:url';
import { BaseSequencer, type TestSpecification } from 'vitest/node';
import { defineConfig } from 'vitest/config';

/** Slow, drawn at random, or watching nothing that quicker tests do not watch. */
const LEFT_OUT = ['tests/published/ASHRAE140/**', 'tests/published/Thompson1952/**', 'tests/published/box/box-command.test.ts', 'tests/physics/random-house-directions.test.ts', 'tests/physics/vapour-closure.test.ts'];

/** Whole houses, seconds each. A first pass without them (MUTATION_PASS=quick) leaves only its survivors to them: incremental mode sees that tests were added. */
const WHOLE_HOUSES = ['tests/physics/energy-closure.test.ts', 'tests/physics/directions.test.ts', 'tests/physics/devices-*.test.ts', 'tests/physics/time-step.test.ts', 'tests/physics/convergence.test.ts', 'tests/published/effects/**', 'tests/published/box/**'];
const WHOLE_HOUSE = /physics\/(?:energy-closure|directions|devices|time-step|convergence)|effects\/|box\//u;
const MANY_DRAWS = /physics\/(?:network-properties|numerics|isothermal|evening-signature)|odex\/|lumped-networks/u;

/** A mutant that a closed form sees must not wait for a house. */
class QuickestFirst extends BaseSequencer {
  override sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const rank = ({ moduleId }: TestSpecification): number => (WHOLE_HOUSE.test(moduleId) ? 2 : Number(MANY_DRAWS.test(moduleId)));
    return Promise.resolve(files.toSorted((one, other) => rank(one) - rank(other) || one.moduleId.localeCompare(other.moduleId)));
  }
}

/** The physics and published tests, as `npm run mutate` needs them: one worker that keeps its modules, the quick files first. */
export default defineConfig({
  test: {
    root: fileURLToPath(new URL('..', import.meta.url)),
    include: ['tests/physics/**/*.test.ts', 'tests/published/**/*.test.ts'],
    exclude: process.env['MUTATION_PASS'] === 'quick' ? [...LEFT_OUT, ...WHOLE_HOUSES] : LEFT_OUT,
    isolate: false,
    maxWorkers: 1,
    testTimeout: 60_000,
    sequence: { sequencer: QuickestFirst },
    env: { RANDOM_HOUSES: '3' },
  },
});
