import { expect, test } from 'vitest';
import type { Effect } from '#rules/input.ts';
import { DigestNotes, type NotesState } from '#rules/telling/notes.ts';
import { tellingSettings } from '#rules/telling/settings.ts';

const settings = tellingSettings(undefined, 'Etc/UTC');
const start = Date.UTC(2026, 10, 23, 9);
const digestAt = Date.UTC(2026, 10, 24, 7);

function effect(
  transition: 'raised' | 'returned',
  judged: number,
  from: 'normal' | 'unacknowledged' | 'acknowledged',
): Extract<Effect, { kind: 'transition' }> {
  return {
    ...{ kind: 'transition', at: judged, judged, rule: 'l/s/c', signal: 'l/s/t' },
    ...{ occurrence: `l/s/c@${judged}`, transition, from, evidence: {} },
    ...{ to: transition === 'raised' ? 'unacknowledged' : 'normal', severity: 1, priority: 'high' },
  };
}

/** Comes every `everyMs` and stays for `staysMs`; what is written down is read again in between where asked. */
function story(
  times: number,
  everyMs: number,
  staysMs: number,
  restarted = false,
  answered = false,
) {
  let notes = new DigestNotes(null);
  for (let i = 0; i < times; i += 1) {
    const at = start + i * everyMs;
    notes.managed(effect('raised', at, 'normal'), settings);
    const from = answered ? 'acknowledged' : 'unacknowledged';
    notes.managed(effect('returned', at + staysMs, from), settings);
    if (restarted) notes = new DigestNotes(JSON.parse(JSON.stringify(notes.save())) as NotesState);
  }
  expect(notes.take(digestAt - 1)).toBe(null);
  const taken = notes.take(digestAt)?.map(({ why, count, told }) => ({ why, count, told })) ?? [];
  expect(notes.dueMs).toBe(null);
  return taken;
}

test.each([false, true])(
  'a highly managed one that chatters is noted from the third within a minute on (restarted: %s)',
  (restarted) => {
    expect(story(5, 10_000, 5_000, restarted)).toEqual([
      { why: 'chattering', count: 3, told: true },
    ]);
  },
);

test('one that was fleeting three times in a row is noted from then on', () => {
  expect(story(5, 600_000, 20_000)).toEqual([{ why: 'fleeting', count: 2, told: true }]);
  // Somebody had it, or it stayed: it could be acted on.
  expect(story(5, 600_000, 20_000, false, true)).toEqual([]);
  expect(story(5, 600_000, 120_000)).toEqual([]);
});

test('what an older version wrote is taken up', () => {
  const note = { rule: 'l/s/c', why: 'quiet' as const, count: 2, lastMs: start };
  const notes = new DigestNotes({ notes: [note], digestDueMs: digestAt });
  expect(notes.take(digestAt)).toEqual([note]);
});
