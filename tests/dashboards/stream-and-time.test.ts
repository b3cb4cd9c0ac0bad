import { describe, expect, test } from 'vitest';
import { readingState } from '../../dashboards/judge/reading.ts';
import { shiftEnd } from '../../dashboards/judge/shift.ts';
import { placeOf, to } from '../../dashboards/router.ts';
import { EventParser } from '../../dashboards/state/event-stream.ts';
import { spanRange } from '../../dashboards/text/clock.ts';
import { say } from '../../dashboards/text/say.ts';
import { now, signal } from '../agent/web/fake-ports.ts';

describe('server-sent events (HTML standard, section 9.2.6)', () => {
  const stream =
    ': hello\n\nid: 7\nevent: alarm\ndata: {"a":\ndata: 1}\n\nid: 8\nevent: sample\ndata: x\n\n';
  test('whole events, wherever the bytes are cut', () => {
    for (let cut = 0; cut <= stream.length; cut += 1) {
      const parser = new EventParser();
      const found = [...parser.take(stream.slice(0, cut)), ...parser.take(stream.slice(cut))];
      expect(found, `cut at ${cut}`).toEqual([
        { event: 'alarm', data: '{"a":\n1}' },
        { event: 'sample', data: 'x' },
      ]);
      expect(parser.lastId).toBe('8');
    }
  });
  test('a new connection forgets what was half said and keeps the id', () => {
    const parser = new EventParser();
    parser.take('id: 7\nevent: alarm\ndata: half');
    parser.begin();
    expect(parser.take('event: health\ndata: {}\n\n')).toEqual([{ event: 'health', data: '{}' }]);
    expect(parser.lastId).toBe('7');
  });
  test('carriage returns, and a comment is no event', () => {
    expect(new EventParser().take(':ping\r\n\r\ndata: a\r\n\r\n')).toEqual([
      { event: 'message', data: 'a' },
    ]);
  });
});

describe('when the shift ends, by the site’s clock', () => {
  const shifts = [360, 840, 1_320];
  const at = (text: string): number => Date.parse(text);
  test.each([
    ['2026-01-15T02:10:20Z', '2026-01-15T06:00:00Z'],
    ['2026-01-15T06:00:00Z', '2026-01-15T14:00:00Z'],
    ['2026-01-15T23:30:00Z', '2026-01-16T06:00:00Z'],
  ])('%s: %s', (instant, end) => {
    expect(new Date(shiftEnd(at(instant), 'Europe/Dublin', shifts)).toISOString()).toBe(
      new Date(end).toISOString(),
    );
  });
  test('summer time moves it', () => {
    // 02:10 UTC in July is 03:10 in Dublin; 06:00 there is 05:00 UTC.
    const end = shiftEnd(at('2026-07-15T02:10:00Z'), 'Europe/Dublin', shifts);
    expect(new Date(end).toISOString()).toBe('2026-07-15T05:00:00.000Z');
  });
});

describe('missing data is a state of its own', () => {
  const wall = signal('wall'); // promised every 60 s, 12 s old
  test.each([
    ['nothing came yet', { ...wall, at: null, value: null, quality: null }, 'none'],
    ['a fresh reading', wall, 'usable'],
    ['as old as three promised readings', { ...wall, at: now - 180_000 }, 'usable'],
    ['older', { ...wall, at: now - 180_001 }, 'silent'],
    [
      'nonsense',
      { ...wall, value: null, quality: { grade: 'bad' as const, cause: 'x' } },
      'unusable',
    ],
    [
      'nonsense long ago',
      { ...wall, at: now - 600_000, value: null, quality: { grade: 'bad' as const, cause: 'x' } },
      'silent',
    ],
    ['old, but nothing was promised', { ...wall, at: now - 9e9, expect_every_ms: null }, 'usable'],
  ])('%s', (_, given, kind) => expect(readingState(given, now).kind).toBe(kind));
});

test('a place and its address are two forms of one thing', () => {
  const address = to('signal', 'mounts-1/mixer-3/agitator');
  expect(address).toBe('#/signal/mounts-1%2Fmixer-3%2Fagitator');
  const { name, parts, query } = placeOf(`${address}?span=d7`);
  expect([name, parts, query.get('span')]).toEqual(['signal', ['mounts-1/mixer-3/agitator'], 'd7']);
  expect(placeOf('#/alarm/%').parts).toEqual(['%']);
});

describe('sentences', () => {
  test('are filled in', () => expect(say('heard', { clock: '02:10:04' })).toBe('heard 02:10:04'));
  test('a range, never a countdown', () => {
    expect(spanRange(180_000, 360_000).replaceAll('\u00a0', ' ')).toBe('3 to 6 min');
    expect(spanRange(50_000, 240_000).replaceAll('\u00a0', ' ')).toBe('50 s to 4 min');
  });
});
