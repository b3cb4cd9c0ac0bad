import { defineConfig } from 'vitest/config';

// Tests run the TypeScript sources as they are; the condition makes #rules/… and its
// siblings resolve to source files, here and in every process a test starts.
const conditions = ['forebond-source', 'module', 'node'];
export default defineConfig({
  resolve: { conditions },
  ssr: { resolve: { conditions } },
  test: {
    include: ['tests/**/*.test.ts'],
    pool: 'forks',
    // Most files wait for a process, a disk or a clock; one a core leaves the cores idle.
    maxWorkers: 2,
    execArgv: ['--conditions=forebond-source'],
    testTimeout: 30_000,
    hookTimeout: 60_000,
  },
});
