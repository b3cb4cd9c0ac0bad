/** Parts counted by the scans of their racks: since the flush, said in time or late, through a compiled site. */
import { describe, expect, test } from 'vitest';
import { quality } from '#rules/signal/quality.ts';
import { Drive } from '../engine/drive.ts';
import { compiled, signalLine } from '../plan/site.ts';

const min = 60_000;
const booth = (derived: string) =>
  compiled(
    `l: { b: { kind: spray-booth, signals: { trigger: ${signalLine('t', '1')} }, derived: { ${derived} } } }`,
  );
const counted = 'parts-since-flush: { each: 12 }';
const said = (site: ReturnType<typeof booth>) =>
  site.problems.map(({ path, problem }) => `${path.slice(3).join('.')}: ${problem}`);

class Booth {
  drive = new Drive(booth(counted).plan);
  mark(atMin: number, mark: string, item?: string, happenedMin = atMin): this {
    const judged = atMin * min;
    const what = item === undefined ? {} : { item };
    this.drive.input({
      kind: 'command',
      verb: 'mark',
      judged,
      station: 'l/b',
      mark,
      ...what,
      at: happenedMin * min,
      by: 'a',
    });
    this.drive.advance(judged + 2_000);
    return this;
  }
  racks(fromMin: number, count: number): this {
    for (let i = 0; i < count; i += 1) this.mark(fromMin + i, 'coated', `R-${fromMin + i}`);
    return this;
  }
  get told() {
    const { value, quality: code } = this.drive.engine.save().latest['l/b/parts-since-flush']!;
    return [value, code];
  }
}

describe('parts since the flush', () => {
  test('so many for each rack, from the flush on', () => {
    expect(new Booth().mark(1, 'flushed').told).toEqual([0, quality.good]);
    expect(new Booth().mark(1, 'flushed').racks(2, 3).told).toEqual([36, quality.good]);
    expect(new Booth().racks(2, 3).mark(9, 'flushed').racks(10, 1).told).toEqual([
      12,
      quality.good,
    ]);
  });
  test('not known before anybody said that it was flushed', () => {
    expect(new Booth().racks(2, 3).told).toEqual([36, quality.unobserved]);
  });
  test('a flush said late keeps what came after it, a rack said late counts where it was', () => {
    const late = new Booth().mark(1, 'flushed').racks(2, 6).mark(10, 'flushed', undefined, 5.5);
    expect(late.told).toEqual([24, quality.good]);
    expect(late.mark(11, 'coated', 'R-90', 4).told).toEqual([24, quality.good]);
    expect(late.mark(12, 'coated', 'R-91', 6).told).toEqual([36, quality.good]);
  });
  test('the same after a restart, downtime and a clock that was set anew', () => {
    const one = new Booth().mark(1, 'flushed').racks(2, 3);
    one.drive = Drive.resume(one.drive);
    one.drive
      .input({ kind: 'gap', judged: 10 * min, fromMs: 6 * min, toMs: 10 * min })
      .advance(10 * min);
    expect(one.racks(11, 1).told).toEqual([48, quality.good]);
    one.drive.input({ kind: 'rebase', judged: 13 * min, deltaMs: -5 * min }).advance(13 * min);
    expect(one.mark(9, 'coated', 'R-7').told).toEqual([60, quality.good]);
  });
  test('hundreds of racks are all counted', () => {
    expect(new Booth().mark(1, 'flushed').racks(2, 520).told[0]).toBe(520 * 12);
  });
});

describe('in a site file', () => {
  test('absent until the site says how many hang on a rack; the time sprayed is there without it', () => {
    const ids = (site: ReturnType<typeof booth>) => site.plan.signals.map(({ id }) => id);
    expect(ids(booth(''))).toContain('l/b/since-flush');
    expect(ids(booth(''))).not.toContain('l/b/parts-since-flush');
    expect(ids(booth(counted))).toContain('l/b/parts-since-flush');
    expect(said(booth(counted))).toEqual([]);
  });
  test('of one’s own, with marks of the station', () => {
    const own = (more: string) => booth(`panels: { kind: mark-count, each: 1${more} }`);
    expect(said(own(', starts_on: [shift-ended], counts_on: [panel-taken]'))).toEqual([]);
    expect(said(own(''))).toEqual(['derived.panels.counts_on: mark-count counts no mark']);
    expect(said(own(', counts_on: [panels-taken]'))).toEqual([
      'derived.panels.counts_on.0: this station has no mark "panels-taken"',
    ]);
  });
  test.each([
    ['parts-since-flush: { each: 0 }', 'derived.parts-since-flush.each: 0 is no number of parts'],
    [
      'parts-since-flush: { each: 2.5 }',
      'derived.parts-since-flush.each: 2.5 is no number of parts',
    ],
    [
      'since-flush: { counts_on: [coated] }',
      'derived.since-flush.counts_on: runtime counts no marks',
    ],
  ])('%s is refused', (derived, problem) => expect(said(booth(derived))).toEqual([problem]));
});
