/**
 * Mails that come by the clock, from a whole agent through a real mail server: the week's alarm
 * performance, the signed head of the ledger; over stops, and over the nights the clocks change.
 */

import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { pino } from 'pino';
import { expect, onTestFinished, test } from 'vitest';
import { startAgent } from '#agent/compose.ts';
import type { TellablePerson } from '#agent/notify/contract.ts';
import { pathsOf } from '#agent/store/data-folder.ts';
import { verifyFolder } from '#agent/store/verify-folder.ts';
import type { Agent } from '#agent/wiring/agent-options.ts';
import type { TellingWritten } from '#rules/site/telling-schema.ts';
import {
  addDevice,
  connectDevice,
  published,
  scratchFolder,
  type TestDevice,
} from '#tests/agent-process.ts';
import { until } from '../../wire/agent-http.ts';
import { ledgerOf } from '../../wire/ledger-lines.ts';
import { sourceOf } from '../../wire/simulated-agent.ts';
import { type MailSide, mailSide, type TakenMail } from '../notify/mail-side.ts';
import { type AheadClock, systemHeld } from './ahead-clock.ts';
import { person } from './plant.ts';

const hour = 3_600_000;
const withMail = (id: string, role: TellablePerson['role']): TellablePerson =>
  person(id, role, { email: `${id}@works.example`, push: false });
const erin = withMail('erin', 'engineer');
const otto = { ...withMail('otto', 'engineer'), language: 'de' as const };
const ed = withMail('ed', 'ehs');

const siteOf = (port: number, telling: TellingWritten) => ({
  site: 'works',
  timezone: 'Europe/Dublin',
  telling: {
    email: { server: 'localhost', port, security: 'none', from: 'alarms@works.example' },
    ...telling,
  },
  lines: {
    l: {
      s: {
        kind: 'custom',
        signals: { t: { topic: 'l/t', payload: { kind: 'plain' }, unit: 'Cel' } },
        rules: {
          hot: {
            ...{ kind: 'band', signal: 't', high: '30 Cel', on_delay: '0 s', priority: 'high' },
            ...{ consequence: 'C.', actions: ['A.'] },
          },
        },
      },
    },
  },
});

/** One folder, its mail server and a clock; agents come and go on it. */
class Works {
  readonly folder = scratchFolder();
  readonly clock: AheadClock = systemHeld();
  private readonly telling: TellingWritten;
  private readonly people: readonly TellablePerson[];
  private agent: Agent | null = null;
  private device: TestDevice | null = null;
  private mail!: MailSide;

  constructor(people: readonly TellablePerson[], telling: TellingWritten = {}) {
    this.people = people;
    this.telling = telling;
    onTestFinished(async () => {
      await this.stop();
      await this.mail.close();
    });
  }

  async start(): Promise<void> {
    this.mail ??= await mailSide('no TLS there', { authOptional: true });
    this.device ??= await addDevice(this.folder, 'oven');
    const nobody = { host: '127.0.0.1', port: 0 };
    this.agent = await startAgent({
      source: await sourceOf(siteOf(this.mail.port, this.telling)),
      ...{ folder: this.folder, clock: this.clock, mode: 'wall', ballastBytes: 0 },
      ...{ http: nobody, mqtt: nobody, tellAlso: this.people, log: pino({ level: 'silent' }) },
    });
  }

  async stop(): Promise<void> {
    await this.agent?.stop();
    this.agent = null;
  }

  async raise(): Promise<void> {
    const client = await connectDevice(this.agent!.mqtt, this.device!);
    for (const value of ['35', '20']) {
      await published(client, 'l/t', value);
      // Two readings of one moment would be one.
      await new Promise((done) => setTimeout(done, 100));
    }
    await client.endAsync();
  }

  goTo(at: number): void {
    this.clock.forward(at - this.clock.wallMs());
  }

  get taken(): readonly TakenMail[] {
    return this.mail.taken;
  }

  of(title: string): TakenMail[] {
    return this.taken.filter(({ mail }) => mail.subject?.startsWith(title));
  }

  /** Once the agent had time to look at its clock again, and said something else by mail. */
  async settled(title: string, count: number): Promise<TakenMail[]> {
    await until(
      async () => this.of(title).length,
      (found) => found >= count,
      60_000,
    );
    // Two looks of the clock later nothing more has come.
    this.clock.forward(15_000);
    await new Promise((done) => setTimeout(done, 500));
    this.clock.forward(15_000);
    await new Promise((done) => setTimeout(done, 500));
    return this.of(title);
  }
}

const weekly = 'Alarm performance';

test('the week comes once, honest about what it rests on; after a stop one is made up for, never two', {
  timeout: 240_000,
}, async () => {
  const works = new Works([erin, otto, ed], { checkpoint_mail: 'off' });
  // Friday, 2 April 2027; Dublin is an hour ahead of UTC.
  works.goTo(Date.parse('2027-04-02T11:00Z'));
  await works.start();
  await works.raise();
  await works.raise();
  works.goTo(Date.parse('2027-04-05T05:59Z'));
  await new Promise((done) => setTimeout(done, 500));
  expect(works.of(weekly)).toEqual([]);
  works.goTo(Date.parse('2027-04-05T06:00:10Z'));
  const [first, ...more] = await works.settled(weekly, 1);
  expect(more).toEqual([]);
  expect(first!.to).toEqual(['erin@works.example']);
  const text = first!.mail.text ?? '';
  expect(first!.mail.subject).toBe('Alarm performance, week to 2027-04-05 · works');
  expect(text).toMatch(/2 alarms were told from 2027-03-29 07:00 to 2027-04-05 07:00, 0\.7 a day/);
  expect(text).toMatch(/The agent ran 2\.8 d of 7 d\./);
  expect(text).toMatch(/which want 30 days or more/);
  expect(text).toMatch(/l\/s\/hot: 2, 100 %/);
  expect(text).toMatch(/high: 2, 100 % \(target: about 5 %\)/);
  expect(first!.mail.html).toContain('The agent ran 2.8 d of 7 d.');
  expect(first!.mail.html).toContain('l/s/hot: 2, 100 %');
  const german = await works.settled('Alarmlast', 1);
  expect(german.map(({ to }) => to)).toEqual([['otto@works.example']]);
  expect(german[0]!.mail.text).toContain('Der Agent lief 2,8 d von 7 d.');

  // Two Mondays go by without an agent, and one more start changes nothing.
  await works.stop();
  works.goTo(Date.parse('2027-04-20T12:00Z'));
  await works.start();
  const made = await works.settled(weekly, 2);
  expect(made.map(({ mail }) => mail.subject)).toEqual([
    'Alarm performance, week to 2027-04-05 · works',
    'Alarm performance, week to 2027-04-19 · works',
  ]);
  expect(made[1]!.mail.text).toMatch(
    /There is no record from 2027-04-12 07:00 to 2027-04-19 07:00/,
  );
  await works.stop();
  await works.start();
  expect(await works.settled(weekly, 2)).toHaveLength(2);
});

test.each([
  ['an hour that is missing', '2027-03-27T20:00Z', '2027-03-28T01:30Z'],
  ['an hour that is walked twice', '2027-10-30T20:00Z', '2027-10-31T00:30Z'],
])('a night with %s: one mail, when it is due', { timeout: 240_000 }, async (_, from, due) => {
  const report = { day: 'sun' as const, at: '01:30', to: ['on-call'] };
  const rota = [{ who: ['erin'] }];
  const works = new Works([erin], { rota, weekly_report: report, checkpoint_mail: 'off' });
  works.goTo(Date.parse(from));
  await works.start();
  await works.raise();
  for (let at = Date.parse(from) + hour; at < Date.parse(due); at += hour) {
    works.goTo(at);
    await new Promise((done) => setTimeout(done, 250));
  }
  expect(works.of(weekly)).toEqual([]);
  works.goTo(Date.parse(due) + 1_000);
  expect(await works.settled(weekly, 1)).toHaveLength(1);
  for (let passed = 0; passed < 4; passed += 1) {
    works.clock.forward(hour / 2);
    await new Promise((done) => setTimeout(done, 250));
  }
  expect(await works.settled(weekly, 1)).toHaveLength(1);
});

test('the signed head of the ledger comes once a day, verifies, and shows an end that was cut off', {
  timeout: 240_000,
}, async () => {
  const works = new Works([erin, ed], { weekly_report: 'off' });
  works.goTo(Date.parse('2027-04-02T12:00Z'));
  await works.start();
  await works.raise();
  // By the hour, for what is due is counted from the agent's first look at the clock.
  for (let hours = 0; works.of('Checkpoint').length === 0 && hours < 40; hours += 1) {
    works.clock.forward(hour);
    await new Promise((done) => setTimeout(done, 250));
  }
  const [mail, ...more] = await works.settled('Checkpoint', 1);
  expect(more).toEqual([]);
  expect(mail!.to).toEqual(['ed@works.example']);
  expect(mail!.mail.text).toMatch(
    /forebond ledger verify --data DIR --checkpoint checkpoint\.json/,
  );
  const [attached] = mail!.mail.attachments;
  expect(attached!.filename).toBe('checkpoint.json');
  await works.stop();
  await works.start();
  expect(await works.settled('Checkpoint', 1)).toHaveLength(1);
  await works.stop();

  const file = join(scratchFolder(), 'checkpoint.json');
  writeFileSync(file, attached!.content);
  expect(verifyFolder(works.folder, file)).toMatchObject({ ok: true, damage: null });
  const { id } = JSON.parse(attached!.content.toString()) as { id: number };
  expect(ledgerOf(works.folder).length).toBeGreaterThanOrEqual(id);
  const paths = pathsOf(works.folder);
  const db = new DatabaseSync(paths.database);
  db.prepare('DELETE FROM ledger WHERE id >= ?').run(id);
  db.close();
  expect(verifyFolder(works.folder, file)).toMatchObject({ ok: false, id, why: 'missing' });
});
