/** Starts that must not succeed say why in one line, and end with code 1. */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { forebond, runWords, scratchFolder, startAgentProcess } from '#tests/agent-process.ts';
import { smallWorks } from './small-works.ts';

const oneLine = /^[^\n]+\n$/;

test('a text file as database', async () => {
  const folder = join(scratchFolder(), 'data');
  const database = join(folder, 'forebond.db');
  const text = `${'shopping list\n'.repeat(40)}`;
  mkdirSync(folder);
  writeFileSync(database, text);
  const end = await forebond(runWords({ site: smallWorks, folder }));
  expect(end).toMatchObject({ code: 1, stdout: '', stderr: expect.stringMatching(oneLine) });
  expect(end.stderr).toContain(`${database} is not a Forebond store.`);
  expect(readFileSync(database, 'utf8')).toBe(text);
});

test('a file as data folder', async () => {
  const folder = join(scratchFolder(), 'data');
  writeFileSync(folder, 'no folder');
  const end = await forebond(runWords({ site: smallWorks, folder }));
  expect(end).toMatchObject({ code: 1, stdout: '', stderr: expect.stringMatching(oneLine) });
});

test('a second agent on one folder; the first goes on', async () => {
  const folder = join(scratchFolder(), 'data');
  const first = await startAgentProcess({ site: smallWorks, folder });
  const second = await forebond(runWords({ site: smallWorks, folder }));
  expect(second).toMatchObject({ code: 1, stdout: '', stderr: expect.stringMatching(oneLine) });
  expect(second.stderr).toContain(`Another agent holds the data folder ${folder}.`);
  const health = await fetch(`${first.page}/api/health`);
  expect(health.status).toBe(200);
  expect(await first.stop()).toMatchObject({ code: 0, stderr: '' });
  // And after it there is no trace of it.
  const third = await startAgentProcess({ site: smallWorks, folder });
  expect(await third.stop()).toMatchObject({ code: 0, stderr: '' });
});

test('a port that is taken: what was opened is closed again', async () => {
  const parent = scratchFolder();
  const first = await startAgentProcess({ site: smallWorks, folder: join(parent, 'one') });
  const folder = join(parent, 'two');
  for (const flag of ['--mqtt', '--http']) {
    const words = [flag, new URL(flag === '--mqtt' ? first.mqtt : first.page).host];
    const second = await forebond(runWords({ site: smallWorks, folder, words }));
    expect(second).toMatchObject({ code: 1, stdout: '', stderr: expect.stringMatching(oneLine) });
  }
  const third = await startAgentProcess({ site: smallWorks, folder });
  expect(await third.stop()).toMatchObject({ code: 0, stderr: '' });
});
