/**
 * Whatever arrives, in whatever beats, looked at however often, stopped and reloaded wherever: the
 * record, put in order and fed at once, gives the same effects and the same derived samples.
 */
import fc from 'fast-check';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { Deadlines } from '#rules/engine/deadlines.ts';
import { Drive } from './drive.ts';
import { arrival, type Story, start, story } from './happenings.ts';
import { smallPlan } from './small-plan.ts';
import { live, replayed } from './story.ts';
import { otherPlan } from './story-plans.ts';

const same = (s: Story): void => {
  const { out, record } = live(s);
  expect(replayed(record, out.end.now)).toEqual(out);
};

afterEach(() => {
  vi.restoreAllMocks();
});

describe('live equals replay', () => {
  test('over 1,000 random stories with downtime, reloads, holds and shelves', () => {
    const seen = new Map<string, number>();
    const count = (what: string) => seen.set(what, (seen.get(what) ?? 0) + 1);
    fc.assert(
      fc.property(story, (s) => {
        const { out, record } = live(s);
        for (const effect of out.effects as {
          kind: string;
          transition?: string;
          rule?: string;
          nuisance?: string;
          off?: string | null;
          oneShot?: true;
        }[]) {
          count(effect.transition ?? effect.kind);
          if (effect.kind === 'extension') count(effect.off === null ? 'own on' : 'own off');
          if (effect.nuisance !== undefined) count(effect.nuisance);
          if (effect.oneShot) count('one-shot');
          if (effect.transition === 'raised') count(`${effect.rule} raised`);
        }
        for (const input of record.inputs) count(`input ${input.kind}`);
        expect(replayed(record, out.end.now)).toEqual(out);
      }),
      { numRuns: 1_000 },
    );
    const often = [
      ...['raised', 'returned', 'acknowledged', 'shelved', 'unshelved', 'removed', 'hold', 'run'],
      ...['refused', 'judgeable', 'removed-from-service', 'returned-to-service'],
      ...['passed-on', 'realarmed', 'suppressed', 'released', 'one-shot', 'chattering', 'fleeting'],
      ...['b-dry raised', 'apart raised', 'aged raised', 'place-late raised', 'mark'],
      ...['after-done raised', 'a-then-b raised'],
      ...['input gap', 'input site', 'input command', 'own on', 'own off'],
    ];
    for (const what of often) expect(seen.get(what) ?? 0, what).toBeGreaterThan(0);
  }, 120_000);

  test('and is seen to differ where deadlines are stamped with when they were noticed', () => {
    const take = Deadlines.prototype.take;
    vi.spyOn(Deadlines.prototype, 'take').mockImplementation(function (this: Deadlines, to) {
      const owner = take.call(this, to);
      this.takenAt = Math.min(to, this.takenAt + 10_000);
      return owner;
    });
    const check = fc.check(fc.property(story, same), { numRuns: 200 });
    expect(check.failed).toBe(true);
  });
});

test('snapshot, restore, same output, at every input of random runs', () => {
  fc.assert(
    fc.property(fc.array(arrival, { minLength: 1, maxLength: 40 }), (arrivals) => {
      const whole = new Drive(otherPlan, start);
      let resumed = new Drive(otherPlan, start);
      const effects: unknown[] = [];
      let clock = start;
      for (const { afterMs, signal, value, behindMs: _, ...rest } of arrivals) {
        clock += afterMs;
        const hold = otherPlan.signals.find(({ id }) => id === signal)!.holdMs;
        const sample = { signal, value, at: clock, judged: clock + hold, ...rest };
        whole.offer(sample).advance(clock);
        resumed.offer(sample).advance(clock);
        effects.push(...resumed.effects);
        resumed = Drive.resume(resumed);
        expect(resumed.engine.save()).toEqual(whole.engine.save());
      }
      whole.advance(clock + 20_000);
      resumed.advance(clock + 20_000);
      expect([...effects, ...resumed.effects]).toEqual(whole.effects);
    }),
    { numRuns: 300 },
  );
}, 120_000);

test('a raise implies that the delay was held: no usable reading said otherwise within it', () => {
  const delayed = smallPlan({
    signals: { a: {} },
    rules: { r: { kind: 'band', on: 'a', settings: { high: '30 Cel', on_delay: '3 s' } } },
  });
  let raised = 0;
  fc.assert(
    fc.property(fc.array(arrival, { minLength: 1, maxLength: 60 }), (arrivals) => {
      const drive = new Drive(delayed, start);
      const seen: { at: number; value: number }[] = [];
      let clock = start;
      for (const { afterMs, value } of arrivals) {
        clock += afterMs;
        drive.offer({ signal: 'a', at: clock, value }).advance(clock);
        seen.push({ at: clock, value });
      }
      drive.advance(clock + 10_000);
      for (const effect of drive.effects) {
        if (effect.kind !== 'transition' || effect.transition !== 'raised') continue;
        raised += 1;
        const from = effect.judged - 3_000;
        const within = seen.filter(({ at }) => at > from && at < effect.judged);
        expect(within.every(({ value }) => value > 30)).toBe(true);
        expect(seen.findLast(({ at }) => at <= from)!.value).toBeGreaterThan(30);
      }
    }),
    { numRuns: 300 },
  );
  expect(raised).toBeGreaterThan(50);
});

test('a value that never left its band raises nothing, whatever its delays and deadband', () => {
  fc.assert(
    fc.property(
      fc.array(fc.tuple(fc.nat({ max: 5_000 }), fc.integer({ min: 100, max: 300 })), {
        minLength: 1,
      }),
      fc.constantFrom('0 s', '2 s'),
      fc.constantFrom('0 K', '1.5 K'),
      (steps, on_delay, deadband) => {
        const banded = smallPlan({
          signals: { a: {} },
          rules: {
            r: {
              kind: 'band',
              on: 'a',
              settings: { low: '10 Cel', high: '30 Cel', on_delay, deadband },
            },
          },
        });
        const drive = new Drive(banded, start);
        let clock = start;
        for (const [after, k] of steps) {
          clock += after;
          drive.offer({ signal: 'a', at: clock, value: k / 10 }).advance(clock);
        }
        expect(drive.advance(clock + 60_000).effects).toEqual([]);
      },
    ),
  );
});
