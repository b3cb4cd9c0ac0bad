import { Command } from 'commander';
import { expect, test } from 'vitest';
import { ledgerCommand, type VerifiedLedger } from '#agent/cli/ledger.ts';

const hash = new Uint8Array(32).fill(0xab);
const whole: VerifiedLedger & { ok: true } = {
  ok: true,
  count: 12,
  head: { id: 12, hash },
  damage: null,
  noted: [],
};

/** What one call of the command asked, printed and exited with. */
function call(verified: VerifiedLedger, ...words: string[]) {
  const lines: string[] = [];
  const asked: unknown[] = [];
  let exit = -1;
  const program = new Command();
  ledgerCommand(program, {
    verify: (folder, checkpoint) => {
      asked.push(folder, checkpoint);
      return verified;
    },
    archive: () => null,
    verifyArchive: () => true,
    defaultFolder: 'data',
    print: (line) => lines.push(line),
    setExitCode: (code) => {
      exit = code;
    },
  });
  program.parse(['ledger', 'verify', ...words], { from: 'user' });
  return { lines, asked, exit };
}

test('a whole ledger: its count and head, exit 0', () => {
  const { lines, asked, exit } = call(whole, '--data', 'there', '--checkpoint', 'kept.json');
  expect(asked).toEqual(['there', 'kept.json']);
  expect(lines).toEqual([`the ledger is whole: 12 records, head ${'ab'.repeat(32)}`]);
  expect(exit).toBe(0);
});

test.each([
  ['changed', 'record 5 was changed'],
  ['missing', 'record 5 is missing'],
  ['swapped', 'record 5 was swapped with another'],
] as const)('the first bad record, %s, in one line, exit 1', (why, line) => {
  const { lines, asked, exit } = call({ ok: false, id: 5, why });
  expect(asked).toEqual(['data', undefined]);
  expect(lines).toEqual([line]);
  expect(exit).toBe(1);
});

test('as JSON, which serves as a checkpoint', () => {
  expect(JSON.parse(call(whole, '--json').lines.join())).toEqual({
    ok: true,
    count: 12,
    id: 12,
    hash: 'ab'.repeat(32),
  });
  const bad = call({ ok: false, id: 5, why: 'missing' }, '--json');
  expect(JSON.parse(bad.lines.join())).toEqual({ ok: false, id: 5, why: 'missing' });
});

test('an empty ledger', () => {
  const empty: VerifiedLedger = {
    ok: true,
    count: 0,
    head: { id: 0, hash: new Uint8Array(32) },
    damage: null,
    noted: [],
  };
  expect(call(empty).lines).toEqual(['the ledger is whole: no records yet']);
});

test('a damaged database is never said to be whole, whatever its chain', () => {
  const damaged: VerifiedLedger = { ...whole, damage: 'Tree 5 page 9: it is torn' };
  const { lines, exit } = call(damaged);
  expect(exit).toBe(1);
  expect(lines.join('\n')).toMatch(
    /^the database is damaged \(Tree 5 page 9: it is torn\); 12 records [^\n]+$/,
  );
  expect(lines.join()).not.toContain('whole');
  expect(JSON.parse(call(damaged, '--json').lines.join())).toEqual({
    ok: false,
    damage: 'Tree 5 page 9: it is torn',
    count: 12,
  });
});

const noted = {
  id: 7,
  at: Date.UTC(2026, 10, 25, 9, 32, 12),
  words: 'Records 120 to 133 of the input log were lost to disk damage.',
  ofLedger: false,
};

test('a loss that the record speaks of is said: the chain holds, exit 0', () => {
  const { lines, exit } = call({ ...whole, noted: [noted] });
  expect(lines).toEqual([
    `the chain holds: 12 records, head ${'ab'.repeat(32)}; but it says itself what was lost:`,
    'record 7, 2026-11-25T09:32:12.000Z: Records 120 to 133 of the input log were lost to disk damage.',
  ]);
  expect(exit).toBe(0);
  expect(JSON.parse(call({ ...whole, noted: [noted] }, '--json').lines.join())).toEqual({
    ok: true,
    count: 12,
    id: 12,
    hash: 'ab'.repeat(32),
    lost: [noted],
  });
});

test('where records of the ledger itself were lost, exit 1', () => {
  const verified = { ...whole, noted: [{ ...noted, ofLedger: true }] };
  expect(call(verified)).toMatchObject({ exit: 1 });
  expect(call(verified).lines.join()).not.toContain('whole');
  expect(JSON.parse(call(verified, '--json').lines.join()).ok).toBe(false);
});

test('of very many losses the first are said, and how many more there are', () => {
  const { lines } = call({ ...whole, noted: Array.from({ length: 23 }, () => noted) });
  expect(lines).toHaveLength(22);
  expect(lines.at(-1)).toBe('and 3 more');
});
