/**
 * Flood, chatter and load at their exact boundaries, and a day worked by hand. Definitions: ISA-18.2 /
 * IEC 62682, "monitoring and assessment", from memory and public summaries of the standard.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Annunciation, alarmLoad } from '../../../rules/alarm/alarm-load.ts';
import { chatteredAt, floods } from '../../../rules/alarm/flood.ts';

const s = 1_000;
const min = 60 * s;
const h = 60 * min;

const one = (rule: string, atMs: number, more: Partial<Annunciation> = {}): Annunciation => ({
  rule,
  priority: 'low',
  atMs,
  fresh: true,
  returnedMs: atMs + 30 * min,
  acknowledgedMs: null,
  ...more,
});

describe('a flood', () => {
  const everyMinute = Array.from({ length: 10 }, (_, i) => i * min);

  it('is not ten alarms in ten minutes', () => {
    expect(floods(everyMinute, 2 * h)).toEqual([]);
  });

  it('begins with the eleventh within ten minutes, at 9:59', () => {
    expect(floods([...everyMinute, 9 * min + 59 * s], 9 * min + 59 * s)).toEqual([
      { fromMs: 9 * min + 59 * s, toMs: null, count: 11 },
    ]);
  });

  it('does not begin where the eleventh comes ten minutes after the first', () => {
    expect(floods([...everyMinute, 10 * min], 2 * h)).toEqual([]);
  });

  it('ends at the instant the window holds fewer than five', () => {
    // At 16:00 the one of 6:00 leaves; those of 7:00, 8:00, 9:00 and 9:59 are left.
    expect(floods([...everyMinute, 9 * min + 59 * s], 2 * h)).toEqual([
      { fromMs: 9 * min + 59 * s, toMs: 16 * min, count: 11 },
    ]);
  });

  it('does not end while five are left', () => {
    const late = [...everyMinute, 9 * min + 59 * s, 15 * min];
    expect(floods(late, 2 * h)[0]?.toMs).toBe(17 * min);
  });
});

describe('chatter', () => {
  it('is three within a minute', () => {
    expect(chatteredAt([0, 25 * s, 59 * s])).toBe(59 * s);
    expect(chatteredAt([0, 30 * s, 61 * s])).toBeNull();
    expect(chatteredAt([0, 30 * s, 60 * s])).toBeNull();
    expect(chatteredAt([0, 30 * s, 61 * s, 70 * s])).toBe(70 * s);
  });
});

describe('a day', () => {
  // By hand: 14 told of which 1 again; 12 of rule a in the first ten minutes (at 0, 40 s, 80 s …
  // 440 s), one of b at 5 h answered after 4 min, told again at 5 h 3 min; c stands since the day before.
  const day: Annunciation[] = [
    one('line/x/c', -25 * h, { returnedMs: null }),
    ...Array.from({ length: 12 }, (_, i) =>
      one('line/x/a', i * 40 * s, { returnedMs: i * 40 * s + 20 * s }),
    ),
    one('line/x/b', 5 * h, { priority: 'high', acknowledgedMs: 5 * h + 4 * min, returnedMs: null }),
    one('line/x/b', 5 * h + 3 * min, {
      priority: 'high',
      fresh: false,
      acknowledgedMs: 5 * h + 4 * min,
      returnedMs: null,
    }),
  ];
  const figures = alarmLoad(day, 0, 24 * h);

  it('counts as a person would', () => {
    expect(figures).toMatchObject({
      told: 14,
      fresh: 13,
      perDay: 14,
      mostInTenMinutes: 12,
      shareOfHoursAbove30: 0,
      shareOfTenMinutesAbove10: 1 / 144,
      // The eleventh at 400 s begins it. Twelve left one by one from 600 s on; the eighth, of 280 s,
      // leaves at 880 s and four are left.
      floods: [{ fromMs: 400 * s, toMs: 880 * s, count: 12 }],
      shareInFlood: 480 / 86_400,
      shareOfTopTen: 1,
      // Every 40 s: two in any minute, never three.
      chattering: [],
      fleeting: [{ rule: 'line/x/a', count: 12 }],
      standing: [{ rule: 'line/x/c', sinceMs: -25 * h }],
    });
    expect(figures.topTen).toEqual([
      { rule: 'line/x/a', count: 12, share: 12 / 13 },
      { rule: 'line/x/b', count: 1, share: 1 / 13 },
    ]);
    expect(figures.byPriority).toEqual({
      high: {
        count: 2,
        share: 2 / 14,
        answering: { answered: 1, unanswered: 0, medianMs: 4 * min, slowestTenthMs: 4 * min },
      },
      medium: {
        count: 0,
        share: 0,
        answering: { answered: 0, unanswered: 0, medianMs: null, slowestTenthMs: null },
      },
      low: {
        count: 12,
        share: 12 / 14,
        answering: { answered: 0, unanswered: 12, medianMs: null, slowestTenthMs: null },
      },
    });
  });

  it('refuses an empty span', () => {
    expect(() => alarmLoad([], 5, 5)).toThrow(RangeError);
  });

  it('gives finite figures of a span without an alarm', () => {
    expect(alarmLoad([], 0, h)).toMatchObject({ told: 0, perDay: 0, shareInFlood: 0 });
  });
});

describe('any story', () => {
  it('has shares between 0 and 1 and floods in order that do not touch', () => {
    const stories = fc.array(fc.integer({ min: 0, max: 6 * h }), { maxLength: 200 });
    fc.assert(
      fc.property(stories, (times) => {
        const list = times.map((atMs, i) => one(`line/x/r${i % 7}`, atMs));
        const { floods: found, ...figures } = alarmLoad(list, 0, 6 * h);
        for (const share of [figures.shareInFlood, figures.shareOfTopTen])
          expect(share).toBeLessThanOrEqual(1 + 1e-12);
        for (const [i, flood] of found.entries()) {
          expect(flood.count).toBeGreaterThan(10);
          expect(flood.toMs ?? Infinity).toBeGreaterThan(flood.fromMs);
          expect(found[i + 1]?.fromMs ?? Infinity).toBeGreaterThanOrEqual(flood.toMs ?? Infinity);
        }
      }),
    );
  });
});
