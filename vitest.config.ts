import { defineConfig } from 'vitest/config';
import { TallyReporter } from './tests/support/tally.ts';

export default defineConfig({
  test: {
    reporters: ['default', new TallyReporter()],
    projects: [
      {
        test: {
          name: 'unit',
          environment: 'node',
          include: ['tests/**/*.test.{ts,tsx}'],
          exclude: ['tests/browser/**'],
          benchmark: { include: ['tests/bench/**/*.bench.ts'] },
          testTimeout: 120_000,
          // All cores; by default one is left free, which on two means that the tests run one by one.
          maxWorkers: '100%',
          sequence: { groupOrder: 0 },
        },
      },
      {
        test: {
          name: 'browser',
          environment: 'node',
          include: ['tests/browser/**/*.test.ts'],
          globalSetup: ['tests/browser/support/global-setup.ts'],
          benchmark: { include: [] },
          testTimeout: 120_000,
          hookTimeout: 60_000,
          // Two cores: two Chromiums at once make each other time out.
          fileParallelism: false,
          sequence: { groupOrder: 1 },
        },
      },
    ],
  },
});
