import { spawnSync } from 'node:child_process';
import { copyFileSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { expect, test } from 'vitest';
import { top } from './source.ts';

// The same fences as fences.ts, as the linter shows them while typing.

/** Importing room's file, what it imports, and words of the message. */
const broken = [
  ['rules/engine.ts', 'node:fs', 'Have the agent hand in'],
  ['rules/engine.ts', 'zod', 'zod/mini'],
  ['rules/engine.ts', '../agent/limits.ts', 'rules/ is the pure core'],
  ['rules/engine.ts', '#rules/signal/sample.ts', 'by relative paths'],
  ['broker/door.ts', '#rules/signal/sample.ts', 'nothing of coating lines'],
  ['agent/store/open.ts', '../web/server.ts', 'never imports its sibling'],
  ['agent/store/open.ts', '#broker/door.ts', 'never imports its sibling'],
  ['agent/web/routes/health.ts', '../../store/open.ts', 'never imports its sibling'],
  ['agent/store/open.ts', '../compose.ts', 'never imports its sibling'],
  ['agent/cli/main.ts', '../../tests/sample.ts', 'never imports tests/'],
  ['agent/compose.ts', '#tests/sample.ts', 'never imports tests/'],
  ['agent/limits.ts', './store/open.ts', 'leans on nothing but Node'],
  ['dashboards/page.ts', '../agent/store/contract.ts', 'types of agent/web/contract.ts'],
  ['start.js', 'zod', 'before anything is installed'],
] as const;

const sound = [
  ['rules/engine.ts', 'zod/mini'],
  ['rules/kinds/band.ts', '../signal/sample.ts'],
  ['broker/door.ts', 'node:net'],
  ['agent/store/open.ts', '../limits.ts'],
  ['agent/web/routes/health.ts', '../ports.ts'],
  ['agent/web/routes/health.ts', '../../limits.ts'],
  ['agent/store/open.ts', '#rules/signal/sample.ts'],
  ['agent/compose.ts', '#broker/door.ts'],
  ['agent/cli/main.ts', '../store/open.ts'],
  ['agent/wiring/plan-book.ts', '../store/open.ts'],
  ['agent/turn/live.ts', '../store/contract.ts'],
  ['dashboards/page.ts', '../agent/web/contract.ts'],
] as const;

/** What the linter says of one import, under the project's settings. */
function lint(path: string, specifier: string): string {
  const folder = mkdtempSync(join(tmpdir(), 'forebond-fences-'));
  try {
    for (const name of ['biome.json', '.gitignore']) {
      copyFileSync(join(top, name), join(folder, name));
    }
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    // `debugger` is refused everywhere: it shows that the file was looked at.
    writeFileSync(join(folder, path), `import { x } from '${specifier}';\nx();\ndebugger;\n`);
    const biome = join(top, 'node_modules', '@biomejs', 'biome', 'bin', 'biome');
    const line = [biome, 'lint', '--reporter=github', path];
    const done = spawnSync(process.execPath, line, { cwd: folder, encoding: 'utf8' });
    return done.stdout + done.stderr;
  } finally {
    rmSync(folder, { recursive: true });
  }
}

test.each(broken)('%s must not import %s', (path, specifier, words) => {
  expect(lint(path, specifier)).toContain(words);
});

test.each(sound)('%s may import %s', (path, specifier) => {
  const said = lint(path, specifier);
  expect(said).toContain('noDebugger');
  expect(said).not.toContain('noRestrictedImports');
});
