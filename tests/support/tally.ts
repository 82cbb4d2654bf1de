import type { Reporter, TestModule } from 'vitest/node';

/** Prints the closing count as one plain line, which tools that know no test runner can read. */
export class TallyReporter implements Reporter {
  onTestRunEnd(modules: ReadonlyArray<TestModule>): void {
    const count = { passed: 0, failed: 0, skipped: 0 };
    for (const module of modules) {
      // A file that fails to load has run no test, yet it has failed.
      if (module.errors().length > 0) count.failed += 1;
      for (const test of module.children.allTests()) {
        const state = test.result().state;
        if (state !== 'pending') count[state] += 1;
      }
    }
    console.log(`${count.passed} passed, ${count.failed} failed, ${count.skipped} skipped`);
  }
}
