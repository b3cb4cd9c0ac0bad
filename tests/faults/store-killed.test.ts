import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { expect, test } from 'vitest';
import { verifyLedger } from '#agent/store/ledger.ts';
import { freshFolder, openAt } from '#tests/agent/store/folders.ts';
import { countTo, storedSeqs } from '#tests/agent/store/turns.ts';

const writer = join(import.meta.dirname, 'store-endless-writer.ts');

/** Lets a writer run until it has said `turns` numbers, kills it; the last number it said. */
async function killAfter(folder: string, turns: number): Promise<number> {
  const child = spawn(process.execPath, ['--conditions=forebond-source', writer, folder], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const exited = once(child, 'exit');
  let said = '';
  for await (const bytes of child.stdout) {
    said += String(bytes);
    if (said.split('\n').length > turns + 2) child.kill('SIGKILL');
  }
  const [, signal] = await exited;
  expect(signal).toBe('SIGKILL');
  return Number(said.split('\n').at(-2));
}

test('twenty kills lose nothing that was committed, and invent nothing', {
  timeout: 120_000,
}, async () => {
  const folder = freshFolder();
  for (let kill = 0; kill < 20; kill += 1) {
    const said = await killAfter(folder, 1 + kill * 7);
    const store = openAt(folder);
    expect(store.findings).toEqual([]);
    expect(store.previousRun?.stopped).toBeNull();
    // The one after the last said may have been committed and not yet said.
    expect(store.lastSeq - said).toBeGreaterThanOrEqual(0);
    expect(store.lastSeq - said).toBeLessThanOrEqual(1);
    expect(storedSeqs(store)).toEqual(countTo(store.lastSeq));
    expect(store.ledgerHead.id).toBe(store.lastSeq);
    const reader = new DatabaseSync(store.path, { readOnly: true });
    expect(verifyLedger(reader)).toMatchObject({ ok: true, count: store.lastSeq });
    reader.close();
    store.close();
  }
});
