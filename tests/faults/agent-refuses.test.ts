/** Starts that must not succeed say why in one line, and end with code 1. */
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import {
  forebond,
  runWords,
  scratchFolder,
  siteFile,
  startAgentProcess,
} from '#tests/agent-process.ts';
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

test.each([
  [
    'a file as the folder above it',
    (parent: string) => join(parent, 'file', 'data'),
    'a part of its path is a file',
  ],
  [
    'a place where the system lets nobody make one',
    () => '/proc/forebond/data',
    'lets nobody make it there',
  ],
  ['a folder of other files', (parent: string) => join(parent, 'docs'), 'holds other files'],
])('%s as data folder: one line, and nothing is made', async (_, folderIn, words) => {
  const parent = scratchFolder();
  writeFileSync(join(parent, 'file'), 'no folder');
  mkdirSync(join(parent, 'docs'));
  writeFileSync(join(parent, 'docs', 'letter.txt'), 'Dear');
  const site = siteFile(join(parent, 'site'), smallWorks);
  const before = readdirSync(parent, { recursive: true });
  const end = await forebond(runWords({ site, folder: folderIn(parent) }));
  expect(end).toMatchObject({ code: 1, stdout: '', stderr: expect.stringMatching(oneLine) });
  expect(end.stderr).toContain(words);
  expect(end.stderr).not.toContain('cable');
  expect(readdirSync(parent, { recursive: true })).toEqual(before);
});

test('no name of a folder is a fault of the command line; an empty variable is none', async () => {
  const parent = scratchFolder();
  const site = siteFile(parent, smallWorks);
  for (const words of [
    ['run', '--site', site],
    ['export'],
    ['ledger', 'verify'],
    ['device', 'list'],
    ['demo'],
  ]) {
    const end = await forebond([...words, '--data', '']);
    expect([words, end.code, end.stdout]).toEqual([words, 2, '']);
    expect(end.stderr).toContain('name a folder');
  }
  const env = { FOREBOND_DATA: '', FOREBOND_HTTP: '', FOREBOND_MQTT: '' };
  const listed = await forebond(['device', 'list'], '', env);
  expect(listed.code).toBe(2);
  expect(listed.stderr).toContain("required option '--data <folder>' not specified");
});

test('a start that fails leaves nothing behind, neither store nor folder', async () => {
  const parent = scratchFolder();
  const site = siteFile(parent, smallWorks);
  const first = await startAgentProcess({ site, folder: join(parent, 'one') });
  const taken = new URL(first.mqtt).host;
  const before = readdirSync(parent);
  const folder = join(parent, 'deep', 'two');
  for (const words of [
    ['--mqtt', taken],
    ['--mqtt', '0.0.0.0:0'],
  ]) {
    const end = await forebond(runWords({ site, folder, words }));
    expect(end).toMatchObject({ code: 1, stdout: '', stderr: expect.stringMatching(oneLine) });
    expect(readdirSync(parent)).toEqual(before);
  }
  // One that was there stays as it was.
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, 'devices.json'), '{"format":1,"devices":[]}');
  const end = await forebond(runWords({ site, folder, words: ['--mqtt', taken] }));
  expect(end.code).toBe(1);
  expect(readdirSync(folder)).toEqual(['devices.json']);
  await first.stop();
});

test('garbage in the list of devices: no agent, and so no open door', async () => {
  const folder = join(scratchFolder(), 'data');
  mkdirSync(folder);
  writeFileSync(join(folder, 'devices.json'), '{ not json');
  const end = await forebond(runWords({ site: smallWorks, folder }));
  expect(end).toMatchObject({ code: 1, stdout: '', stderr: expect.stringMatching(oneLine) });
  expect(end.stderr).toContain('The list of devices');
  expect(readdirSync(folder)).toEqual(['devices.json']);
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
