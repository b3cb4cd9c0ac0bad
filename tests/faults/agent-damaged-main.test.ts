/**
 * The main file damaged while no agent ran, page after page: the next start runs, says that the
 * record is lost, keeps the damaged file, has what stood on hold, and goes on saying so.
 */
import { cpSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { expect, test } from 'vitest';
import {
  type AgentProcess,
  forebond,
  scratchFolder,
  siteFile,
  startAgentProcess,
} from '#tests/agent-process.ts';
import { get, type HealthSeen, post } from '../wire/agent-http.ts';
import { ledgerOf } from '../wire/ledger-lines.ts';
import { smallWorks } from './small-works.ts';

const pageBytes = 4_096;

const healthOf = async (agent: AgentProcess) =>
  (await get<HealthSeen>(agent.page, '/api/health')).body;
const holdsOf = async (agent: AgentProcess) =>
  (await get<{ holds: { id: string; item: string }[] }>(agent.page, '/api/holds')).body.holds;

/** A folder an agent has worked in, with a drum on hold, stopped cleanly. */
async function workedIn() {
  const parent = scratchFolder();
  const folder = join(parent, 'data');
  const site = siteFile(parent, smallWorks);
  const agent = await startAgentProcess({ site, folder });
  const hold = { what: 'container', item: 'drum-7', reason: 'it smells' };
  expect((await post(agent.page, '/api/holds', hold)).status).toBeLessThan(300);
  expect((await agent.stop()).code).toBe(0);
  return { folder, site };
}

const rootPages = (folder: string): Map<string, number> => {
  const db = new DatabaseSync(join(folder, 'forebond.db'), { readOnly: true });
  const rows = db.prepare('SELECT name, rootpage FROM sqlite_schema WHERE rootpage > 0').all();
  db.close();
  return new Map(rows.map(({ name, rootpage }) => [String(name), Number(rootpage)]));
};

/** The page of this table, or the first page behind the header, made unreadable. */
function spoil(folder: string, page: number): void {
  const path = join(folder, 'forebond.db');
  const bytes = readFileSync(path);
  const from = (page - 1) * pageBytes + (page === 1 ? 100 : 0);
  bytes.fill(0xa5, from, page * pageBytes);
  writeFileSync(path, bytes);
}

test('each start runs, sets the file aside and says what is lost', {
  timeout: 120_000,
}, async () => {
  const { folder, site } = await workedIn();
  const pages = rootPages(folder);
  const spoilt = ['signal', 'input', 'occurrence_open', 'hold', 'ledger', 'run'];
  for (const name of [...spoilt, 'the header']) {
    const copy = `${folder}-copy`;
    rmSync(copy, { recursive: true, force: true });
    cpSync(folder, copy, { recursive: true });
    spoil(copy, pages.get(name) ?? 1);
    const verified = await forebond(['ledger', 'verify', '--data', copy]);
    expect([verified.code, verified.stdout.includes('whole')], name).toEqual([1, false]);
    const first = await startAgentProcess({ site, folder: copy });
    const aside = readdirSync(copy).filter((each) => /^forebond-unreadable-.*\.db$/.test(each));
    expect(aside, name).toHaveLength(1);
    const health = await healthOf(first);
    expect(health.parts.record, name).toBe('out-of-specification');
    expect(health.notes.record).toContain(`moved aside as ${aside[0]}`);
    expect(health.notes.record).toMatch(/the backup settings-\d{8}\.db/);
    expect((await holdsOf(first)).map(({ item }) => item)).toEqual(['drum-7']);
    const id = (await holdsOf(first))[0]?.id;
    const lifted = { disposition: 'released', reason: 'tested' };
    expect((await post(first.page, `/api/holds/${id}/lift`, lifted)).status, name).toBe(200);
    expect(await holdsOf(first)).toMatchObject([{ id, lifted }]);
    const end = await first.stop();
    expect(end.code).toBe(0);
    expect(end.stderr).toContain('The database could not be read');
    expect(ledgerOf(copy)).toContainEqual(
      expect.objectContaining({
        type: 'finding',
        finding: expect.objectContaining({ kind: 'unreadable' }),
      }),
    );
    // The next start has not forgotten, until somebody takes the file away.
    const second = await startAgentProcess({ site, folder: copy });
    expect((await healthOf(second)).notes.record).toContain(`${aside[0]} in the data folder`);
    await second.stop();
  }
});
