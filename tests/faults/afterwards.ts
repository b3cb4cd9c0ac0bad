/**
 * What must hold of a data folder after whatever happened to its agent.
 */
import { DatabaseSync } from 'node:sqlite';
import { expect } from 'vitest';
import { ledgerBody } from '#agent/alarms/desk.ts';
import { readSite } from '#agent/site/read-site.ts';
import { canonicalJson } from '#agent/store/canonical.ts';
import type { LedgerBody } from '#agent/store/contract.ts';
import { pathsOf } from '#agent/store/data-folder.ts';
import { readRange } from '#agent/store/range.ts';
import { verifyFolder } from '#agent/store/verify-folder.ts';
import { replayFolder } from '#agent/wiring/replay-folder.ts';
import { isBad } from '#rules/signal/quality.ts';
import type { Publishers } from './publishers.ts';
import { keyOf } from './small-works.ts';

/** Usable stored values of each signal as keys, in the order of time, with repeats. */
export function storedKeys(folder: string): Map<string, number[]> {
  const found = new Map<string, number[]>();
  for (const item of readRange(folder, { signals: [], sinceMs: 0, untilMs: 8e15 })) {
    if (item.kind === 'damage') throw new Error(`damage: ${JSON.stringify(item)}`);
    const { batch, signals } = item;
    for (let i = 0; i < batch.count; i += 1) {
      if (isBad(batch.quality[i]!)) continue;
      const { name } = signals[batch.signal[i]!]!;
      const keys = found.get(name) ?? [];
      keys.push(keyOf(batch.value[i]!));
      found.set(name, keys);
    }
  }
  return found;
}

/** Every acknowledged value is there, no other than sent ones, and none twice with its own time. */
export function expectKept(folder: string, publishers: Publishers): void {
  const stored = storedKeys(folder);
  for (const [signal, keys] of publishers.acknowledged) {
    const there = new Set(stored.get(signal));
    const lost = [...keys].filter((key) => !there.has(key));
    expect(lost, `acknowledged and lost, of ${signal}`).toEqual([]);
  }
  for (const [signal, sent] of publishers.sent) {
    const there = stored.get(signal) ?? [];
    expect(
      there.filter((key) => !sent.has(key)),
      `never sent, of ${signal}`,
    ).toEqual([]);
    if (/own-\d$/.test(signal))
      expect(new Set(there).size, `twice, of ${signal}`).toBe(there.length);
  }
}

export function ledgerOf(folder: string): LedgerBody[] {
  const db = new DatabaseSync(pathsOf(folder).database, { readOnly: true });
  try {
    const rows = db.prepare('SELECT record FROM ledger ORDER BY id').all();
    return rows.map(({ record }) => {
      const { id: _, ...body } = JSON.parse(String(record)) as LedgerBody & { id: number };
      return body;
    });
  } finally {
    db.close();
  }
}

const effectTypes = new Set(['transition', 'judgeable', 'hold', 'run', 'refused']);

/** The ledger's records of what the engine did, as text. */
export const judgedThen = (folder: string): string[] =>
  ledgerOf(folder)
    .filter(({ type }) => effectTypes.has(type))
    .map(({ told_before_kept: _, ...body }) => canonicalJson(body));

/** What an engine that was never interrupted does over the same record. */
export async function judgedAgain(folder: string, site: string): Promise<string[]> {
  const reading = await readSite(site);
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  const again: string[] = [];
  replayFolder(
    reading.source,
    folder,
    {},
    {
      emit: (effect) => again.push(canonicalJson(ledgerBody(effect))),
      damage: (damage) => {
        throw new Error(`damage: ${JSON.stringify(damage)}`);
      },
    },
  );
  return again;
}

/** The chain is whole, recovery agreed each time, and the alarms are those of an unbroken run. */
export async function expectJudgedAlike(folder: string, site: string): Promise<void> {
  expect(verifyFolder(folder)).toMatchObject({ ok: true });
  const types = ledgerOf(folder).map(({ type }) => type);
  expect(types).not.toContain('recovered-differs');
  expect(judgedThen(folder)).toEqual(await judgedAgain(folder, site));
}
