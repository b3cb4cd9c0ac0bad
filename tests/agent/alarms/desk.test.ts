/** The desk, fed with what an engine says. */
import { describe, expect, test } from 'vitest';
import { Desk } from '#agent/alarms/desk.ts';
import type { Occurrence } from '#agent/alarms/occurrence.ts';
import { limits } from '#agent/limits.ts';
import type { HoldRow, OccurrenceRow } from '#agent/store/contract.ts';
import type { AlarmVerb } from '#rules/input.ts';
import { Drive } from '../../rules/engine/drive.ts';
import { type SmallRule, smallPlan } from '../../rules/engine/small-plan.ts';

const plain = { latching: false, selfAcknowledging: false, highlyManaged: false };

class Scene {
  desk = new Desk();
  readonly rows = new Map<string, OccurrenceRow>();
  readonly holds = new Map<string, HoldRow>();
  readonly ledger: string[] = [];
  private readonly drive: Drive;
  private taken = 0;

  constructor(rule: Partial<SmallRule> = {}) {
    const settings = { high: '30 Cel', high_high: '40 Cel' };
    const rules = { r: { kind: 'band', on: 't', settings, ...rule } };
    this.drive = new Drive(smallPlan({ signals: { t: { expectEveryMs: 10_000 } }, rules }));
  }

  see(at: number, value: number): this {
    this.drive.values('t', [at, value]);
    return this.taking();
  }

  say(at: number, verb: AlarmVerb, occurrence: string, untilMs?: number): this {
    this.drive.input({
      kind: 'command',
      judged: at,
      verb,
      occurrence,
      by: 'p1',
      reason: 'because',
      ...(untilMs === undefined ? {} : { untilMs }),
    });
    return this.until(at);
  }

  lift(at: number, hold: string): this {
    const { drive } = this;
    drive.input({
      kind: 'command',
      judged: at,
      verb: 'lift',
      hold,
      disposition: 'scrapped',
      by: 'p1',
      reason: 'broken',
    });
    return this.until(at);
  }

  until(at: number): this {
    this.drive.advance(at);
    return this.taking();
  }

  one(id: string): Occurrence {
    const found = this.desk.occurrence(id);
    if (found === null) throw new Error(`the desk has no ${id}`);
    // What is at hand is what the disk has.
    expect(JSON.parse(this.rows.get(id)!.detail)).toEqual(found);
    return found;
  }

  private taking(): this {
    for (const effect of this.drive.effects.slice(this.taken)) {
      const entry = this.desk.take(effect);
      for (const row of entry.occurrences) this.rows.set(row.id, row);
      for (const row of entry.holds) this.holds.set(row.id, row);
      this.ledger.push(entry.ledger.type);
    }
    this.taken = this.drive.effects.length;
    return this;
  }
}

describe('an occurrence', () => {
  test('from its raise to its close', () => {
    const scene = new Scene().see(1, 31);
    expect(scene.one('r@1')).toMatchObject({
      rule: 'r',
      signal: 't',
      state: 'unacknowledged',
      severity: 1,
      priority: 'medium',
      raised: 1,
      returned: null,
      closed: null,
      acknowledged: null,
      judgeable: true,
      evidence: { value: 31, limit: 30, side: 'high' },
      evidenceAt: 1,
    });
    scene.see(2, 41);
    expect(scene.one('r@1')).toMatchObject({
      severity: 2,
      priority: 'high',
      evidence: { limit: 40 },
      evidenceAt: 2,
    });
    scene.say(3, 'acknowledge', 'r@1');
    expect(scene.one('r@1').acknowledged).toEqual({ by: 'p1', at: 3 });
    expect(scene.desk.open()).toHaveLength(1);
    scene.see(4, 20);
    const closed = scene.one('r@1');
    // What it closed with: the evidence is of when it last spoke, the severity of its worst.
    expect(closed).toMatchObject({
      state: 'normal',
      returned: 4,
      closed: 4,
      severity: 2,
      evidenceAt: 2,
    });
    expect(closed.steps.map(({ judged, transition, by }) => [judged, transition, by])).toEqual([
      [1, 'raised', null],
      [2, 'realarmed', null],
      [3, 'acknowledged', 'p1'],
      [4, 'returned', null],
    ]);
    expect(scene.desk.open()).toEqual([]);
    expect(scene.desk.atHand()).toHaveLength(1);
    expect(scene.ledger).toEqual(['transition', 'transition', 'transition', 'transition']);
  });
  test('returned and unseen it stays open; the next takes its place, and says so', () => {
    const scene = new Scene().see(1, 31).see(2, 20).see(3, 32);
    expect(scene.one('r@1')).toMatchObject({ closed: 3, supersededBy: 'r@3', returned: 2 });
    expect(scene.one('r@3')).toMatchObject({ closed: null, supersededBy: null, raised: 3 });
    expect(scene.desk.open().map(({ id }) => id)).toEqual(['r@3']);
  });
  test('raised again within its millisecond it goes on, open, and is not forgotten as closed', () => {
    const scene = new Scene({ class: { ...plain, selfAcknowledging: true } });
    scene.see(1, 31).see(1, 20);
    expect(scene.one('r@1').closed).toBe(1);
    scene.see(1, 32);
    expect(scene.one('r@1')).toMatchObject({
      closed: null,
      returned: null,
      state: 'unacknowledged',
    });
    expect(scene.one('r@1').steps).toHaveLength(3);
    for (let i = 1; i <= limits.closedOccurrencesKept + 10; i += 1)
      scene.see(i * 10, 20).see(i * 10 + 1, 31);
    const open = scene.desk.open().map(({ id }) => id);
    expect(open).toEqual([`r@${(limits.closedOccurrencesKept + 10) * 10 + 1}`]);
  });
  test('raised while its rule is shelved it is known to be shelved, and until when', () => {
    const scene = new Scene().say(5, 'shelve', 'r', 500).see(10, 31);
    expect(scene.one('r@10')).toMatchObject({ state: 'shelved', shelvedUntil: 500, closed: null });
    scene.until(500);
    expect(scene.one('r@10')).toMatchObject({ state: 'unacknowledged', shelvedUntil: null });
    expect(scene.one('r@10').steps.at(-1)).toMatchObject({ transition: 'unshelved', by: 'clock' });
  });
  test('over while it is shelved and seen, it closes there', () => {
    const scene = new Scene().see(1, 31).say(2, 'acknowledge', 'r@1').say(3, 'shelve', 'r@1', 500);
    expect(scene.one('r@1')).toMatchObject({ state: 'shelved', shelvedUntil: 500 });
    scene.see(4, 20);
    expect(scene.one('r@1')).toMatchObject({ state: 'shelved', closed: 4 });
    expect(scene.desk.open()).toEqual([]);
  });
  test('latched it stays open until its reset', () => {
    const scene = new Scene({ class: { ...plain, latching: true } });
    scene.see(1, 31).see(2, 20).say(3, 'acknowledge', 'r@1');
    expect(scene.one('r@1')).toMatchObject({ state: 'latched-acknowledged', closed: null });
    scene.say(4, 'reset', 'r@1');
    expect(scene.one('r@1')).toMatchObject({ state: 'normal', closed: 4 });
  });
  test('keeps its first and its newest transitions, however many there are', () => {
    const scene = new Scene({ class: { ...plain, latching: true } });
    for (let i = 0; i < limits.occurrenceStepsKept + 50; i += 1) scene.see(i + 1, i % 2 ? 20 : 31);
    const { steps } = scene.one('r@1');
    expect(steps).toHaveLength(limits.occurrenceStepsKept);
    expect(steps[0]!.judged).toBe(1);
    expect(steps.at(-1)!.judged).toBe(limits.occurrenceStepsKept + 50);
  });
});

test('a command that changed nothing is in the ledger alone', () => {
  const scene = new Scene().say(1, 'acknowledge', 'r@0');
  expect(scene.ledger).toEqual(['refused']);
  expect(scene.rows.size).toBe(0);
});

describe('holds', () => {
  const holding = { hold: { what: 'container', item: 'drum-3' } } as const;
  test('set by a rule, listed until lifted', () => {
    const scene = new Scene(holding).see(1, 31);
    const hold = {
      id: 'hold-1',
      what: 'container',
      item: 'drum-3',
      since: 1,
      by: 'rule:r',
      occurrence: 'r@1',
    };
    expect(scene.desk.heldNow()).toMatchObject([hold]);
    scene.see(2, 20).say(3, 'acknowledge', 'r@1');
    expect(scene.desk.heldNow()).toHaveLength(1);
    scene.lift(4, 'hold-1');
    expect(scene.desk.heldNow()).toEqual([]);
    expect(scene.desk.keptHold('hold-1')).toBeNull();
    const row = scene.holds.get('hold-1')!;
    expect(row.lifted).toBe(4);
    expect(JSON.parse(row.detail)).toMatchObject({
      ...hold,
      lifted: { at: 4, by: 'p1', disposition: 'scrapped', reason: 'broken' },
    });
  });
  test('loaded from disk, they can be lifted', () => {
    const before = new Scene(holding).see(1, 31);
    const desk = new Desk();
    desk.load([], [...before.holds.values()]);
    expect(desk.heldNow()).toEqual(before.desk.heldNow());
    before.desk = desk;
    before.lift(4, 'hold-1');
    expect(JSON.parse(before.holds.get('hold-1')!.detail)).toMatchObject({
      since: 1,
      by: 'rule:r',
    });
  });
});

describe('what is kept at hand', () => {
  const closedRows = (count: number): OccurrenceRow[] => {
    const scene = new Scene({ class: { ...plain, selfAcknowledging: true } });
    for (let i = 0; i < count; i += 1) scene.see(i * 10 + 1, 31).see(i * 10 + 2, 20);
    return [...scene.rows.values()];
  };
  test('is bounded: the oldest closed ones go first', () => {
    const scene = new Scene({ class: { ...plain, selfAcknowledging: true } });
    for (let i = 0; i < limits.closedOccurrencesKept + 3; i += 1)
      scene.see(i * 10 + 1, 31).see(i * 10 + 2, 20);
    expect(scene.desk.atHand()).toHaveLength(limits.closedOccurrencesKept);
    expect(scene.desk.occurrence('r@21')).toBeNull();
    expect(scene.desk.occurrence('r@31')).not.toBeNull();
  });
  test('is bounded after a start too, and open ones always stay', () => {
    const rows = closedRows(limits.closedOccurrencesKept + 3);
    const open = { ...rows[0]!, closed: null };
    open.detail = JSON.stringify({ ...JSON.parse(open.detail), closed: null });
    const desk = new Desk();
    desk.load([open, ...rows.slice(1)], []);
    expect(desk.atHand()).toHaveLength(limits.closedOccurrencesKept + 1);
    expect(desk.open().map(({ id }) => id)).toEqual([open.id]);
  });
});
