/**
 * The agent for benchmarks in a process of its own: `agent-process.ts SIGNALS [FOLDER [SOURCE]]`.
 * SOURCE: JSON of a site and its materials, instead of the plain one.
 *
 * Tells its parent where it answers; then answers every message with how many messages it took.
 */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pino } from 'pino';
import { startAgent } from '../../agent/compose.ts';
import type { SiteSource } from '../../agent/site/revision.ts';
import { plainSource } from './simulate.ts';

const signals = Number(process.argv[2]);
const given = process.argv[3];
const written = process.argv[4];
const folder = given ?? mkdtempSync(join(tmpdir(), 'forebond-bench-'));
const agent = await startAgent({
  source:
    written === undefined
      ? plainSource(signals)
      : (JSON.parse(readFileSync(written, 'utf8')) as SiteSource),
  folder,
  http: { host: '127.0.0.1', port: 0 },
  mqtt: { host: '127.0.0.1', port: 0 },
  mode: 'wall',
  log: pino({ level: 'warn' }, pino.destination(2)),
});
process.send?.({ port: Number(new URL(agent.mqtt).port), page: agent.page, folder });
process.on('message', () => {
  void fetch(`${agent.page}/metrics`)
    .then((answer) => answer.text())
    .then((text) => {
      const found = /^forebond_messages_total (\S+)/m.exec(text);
      process.send?.({ count: Number(found?.[1] ?? 0) });
    });
});
process.on('disconnect', () => {
  void agent.stop().then(() => {
    if (given === undefined) rmSync(folder, { recursive: true });
    process.exit(0);
  });
});
