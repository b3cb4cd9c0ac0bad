/**
 * A disk that fills up under load: people first, nothing acknowledged lost, nobody thrown out, and
 * on again by itself when there is room.
 */
import { rmSync, statfsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { describe, expect, onTestFinished, test } from 'vitest';
import { noMountBecause, smallDisk } from '#tests/agent/store/small-disk.ts';
import { EventReader } from '#tests/agent/web/event-source.ts';
import {
  addDevice,
  connectDevice,
  published,
  scratchFolder,
  siteFile,
  startAgentProcess,
} from '#tests/agent-process.ts';
import { expectJudgedAlike, expectKept, ledgerOf } from './afterwards.ts';
import { noted, Publishers } from './publishers.ts';
import { keyOf, smallWorks } from './small-works.ts';

const program = join(import.meta.dirname, 'tuned-agent.ts');
const megabyte = 1_048_576;
const because = noMountBecause();

/** Takes all room on the disk, again and again while others give some up. */
function fill(disk: string): void {
  for (let file = 0; ; file += 1) {
    const { bavail, bsize } = statfsSync(disk);
    if (bavail === 0) return;
    try {
      writeFileSync(join(disk, `other-${file}`), Buffer.alloc(bavail * bsize + megabyte));
    } catch (error) {
      if (!(error instanceof Error && 'code' in error && error.code === 'ENOSPC')) throw error;
    }
  }
}

const free = (disk: string): void => {
  for (let file = 0; file < 100; file += 1) rmSync(join(disk, `other-${file}`), { force: true });
};

async function until(what: string, done: () => Promise<boolean>, ms = 15_000): Promise<void> {
  const deadline = Date.now() + ms;
  while (!(await done())) {
    if (Date.now() > deadline) throw new Error(`not within ${ms} ms: ${what}`);
    await wait(100);
  }
}

interface Told {
  readonly change: string;
  readonly alarm: { readonly occurrence: string; readonly rule: string };
}

// Only root may mount a disk of its own; the name below says why where it was skipped.
describe.skipIf(because !== null)(
  `16 MB${because === null ? '' : ` (skipped: ${because})`}`,
  () => {
    test('filled under QoS 1 load', { timeout: 120_000 }, async () => {
      const disk = smallDisk(16);
      const folder = join(disk, 'data');
      const site = siteFile(scratchFolder(), smallWorks);
      const device = await addDevice(folder, 'hall', { publish: ['hall/#'] });
      const agent = await startAgentProcess({
        site,
        folder,
        program,
        words: [JSON.stringify({ site, folder, ballastBytes: megabyte })],
      });
      const stream = await EventReader.open(Number(new URL(agent.page).port));
      onTestFinished(() => stream.close());
      const status = async () => (await fetch(`${agent.page}/api/health`)).status;
      const publishers = new Publishers();
      await publishers.start(agent.mqtt, device);
      await wait(800);
      expect(await status()).toBe(200);

      fill(disk);
      await until('health is failure', async () => {
        fill(disk);
        return (await status()) === 503;
      });
      const health = (await (await fetch(`${agent.page}/api/health`)).json()) as {
        parts: Record<string, string>;
        notes: Record<string, string>;
      };
      expect(health.parts.disk).toBe('failure');
      expect(health.notes.disk).toContain('is full');
      const acknowledged = publishers.acknowledgedCount;
      const { length: before } = stream.heard;

      // An alarm while the disk refuses, from a sensor that waits for no acknowledgement.
      const sensor = await connectDevice(agent.mqtt, device);
      for (const value of [9.5555, 59.5555]) {
        noted(publishers.sent, 'hall/bench/plain-2', keyOf(value));
        await published(sensor, 'hall/2/plain', `${value}`, 0);
        await wait(100);
      }
      const told = (): Told[] =>
        stream.heard
          .slice(before)
          .filter(({ event }) => event === 'alarm')
          .map(({ data }) => data as Told);
      const raised = (): Told | undefined =>
        told().find(
          ({ change, alarm }) => alarm.rule === 'hall/bench/plain-2-warm' && /raised/.test(change),
        );
      await until('the alarm is told', async () => raised() !== undefined, 5_000);
      await wait(2_500);
      expect(await status()).toBe(503);
      // Publishers wait, and are still there.
      expect(publishers.acknowledgedCount).toBe(acknowledged);
      expect(publishers.waiting).toBeGreaterThan(0);
      expect(publishers.dropped).toBe(0);
      const toldMeanwhile = told();

      free(disk);
      await until('health is good again', async () => (await status()) === 200);
      await wait(300);
      expect(publishers.acknowledgedCount).toBeGreaterThan(acknowledged);
      await publishers.stop();
      expect(publishers.dropped).toBe(0);
      await sensor.endAsync();
      stream.close();
      expect(await agent.stop()).toMatchObject({ code: 0, stderr: '' });

      const ledger = ledgerOf(folder);
      for (const { change, alarm } of toldMeanwhile) {
        const entered = ledger.filter(
          ({ type, occurrence, transition }) =>
            type === 'transition' && occurrence === alarm.occurrence && transition === change,
        );
        expect(entered, `${change} of ${alarm.occurrence}`).toHaveLength(1);
        expect(entered[0]).toMatchObject({ told_before_kept: true });
      }
      expect(
        ledger.filter(({ told_before_kept }) => told_before_kept === undefined).length,
      ).toBeGreaterThan(5);
      expectKept(folder, publishers);
      await expectJudgedAlike(folder, site);
    });
  },
);
