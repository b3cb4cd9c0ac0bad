import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { AlarmState, Transition } from '#rules/alarm/lifecycle.ts';
import type { Priority } from '#rules/alarm/priority.ts';
import type { Effect } from '#rules/input.ts';
import type { AlarmToTell, Order } from '#rules/telling/chase.ts';
import { TellingPlan } from '#rules/telling/plan.ts';
import { escalateAfterMs, tellingSettings } from '#rules/telling/settings.ts';

const min = 60_000;
const hour = 60 * min;
/** A Wednesday, 09:00 in Dublin. */
const start = Date.UTC(2026, 10, 25, 9);
type TransitionEffect = Extract<Effect, { kind: 'transition' }>;

const plain = tellingSettings(undefined, 'Europe/Dublin');
const quiet = tellingSettings(
  { quiet_hours: { from: '22:00', to: '06:00' }, escalate_after: { high: '10 min' } },
  'Europe/Dublin',
);

class Scene {
  plan: TellingPlan;
  /** Occurrences for which a worse one speaks. */
  readonly outranked = new Set<string>();
  readonly told: string[] = [];
  now = start;

  constructor(settings = plain) {
    this.plan = new TellingPlan(settings, [], null, (occurrence) => this.outranked.has(occurrence));
  }

  /** As text: `step as rungs occurrence`, minutes after the start before it. */
  private hear(orders: readonly Order[]): void {
    for (const order of orders) {
      const at = `${(order.at - start) / min}`;
      if (order.do === 'tell')
        this.told.push(
          `${at} ${order.as} ${order.occurrence} #${order.step} ${order.rungs.join('-')}${order.silent ? ' silent' : ''}`,
        );
      else if (order.do === 'end')
        this.told.push(
          `${at} ${order.as} ${order.occurrence} #${order.step} ${order.by ?? ''}`.trim(),
        );
      else
        this.told.push(
          `${at} digest ${order.notes.map((n) => `${n.rule}:${n.why}:${n.count}`).join()}`,
        );
    }
  }

  event(
    occurrence: string,
    transition: Transition,
    to: AlarmState,
    more: Partial<TransitionEffect> & Partial<AlarmToTell> = {},
  ): this {
    const { priority = 'medium' as Priority, highlyManaged = false, respondMs = 20 * min } = more;
    const rule = more.rule ?? `l/s/${occurrence}`;
    const effect: TransitionEffect = {
      kind: 'transition',
      at: this.now,
      judged: this.now,
      rule,
      signal: 'l/s/t',
      occurrence,
      transition,
      from: more.from ?? (transition === 'raised' ? 'normal' : 'unacknowledged'),
      to,
      severity: 1,
      priority,
      evidence: {},
      ...(more.by === undefined ? {} : { by: more.by }),
      ...(more.nuisance === undefined ? {} : { nuisance: more.nuisance }),
      ...(more.closes === undefined ? {} : { closes: more.closes }),
      ...(more.supersedes === undefined ? {} : { supersedes: more.supersedes }),
    };
    const alarm = {
      occurrence,
      rule,
      station: 'l/s',
      hazard: 'h',
      priority,
      highlyManaged,
      respondMs,
    };
    this.hear(this.plan.take(effect, alarm));
    return this;
  }

  raise(occurrence: string, more: Parameters<Scene['event']>[3] = {}): this {
    return this.event(occurrence, 'raised', 'unacknowledged', more);
  }

  acknowledge(occurrence: string, by = 'anna'): this {
    return this.event(occurrence, 'acknowledged', 'acknowledged', { by });
  }

  /** Looks every ten seconds. */
  pass(ms: number): this {
    for (const until = this.now + ms; this.now < until; ) {
      this.now += 10_000;
      this.hear(this.plan.look(this.now));
    }
    return this;
  }

  /** Ended and begun again from what is written down. */
  restart(): this {
    const kept = JSON.parse(JSON.stringify([this.plan.all(), this.plan.state()]));
    this.plan = new TellingPlan(plain, kept[0], kept[1]);
    return this;
  }
}

describe('one alarm', () => {
  test('goes up the ladder until somebody acknowledges, then falls silent', () => {
    const { told } = new Scene()
      .raise('a')
      .pass(25 * min)
      .acknowledge('a')
      .pass(24 * hour);
    expect(told).toEqual([
      '0 alarm a #0 0-0',
      '10 again a #1 1-1',
      '20 again a #2 2-2',
      '25 answered a #3 anna',
    ]);
  });
  test('everyone is told again less and less often, for as long as nobody answers', () => {
    const { told } = new Scene().raise('a').pass(12 * hour);
    const ats = told.map((line) => Number(line.split(' ')[0]));
    expect(ats).toEqual([0, 10, 20, 30, 50, 90, 170, 330, 570]);
  });
  test('that is over calls nobody further, and its end makes no sound', () => {
    const { told } = new Scene()
      .raise('a')
      .pass(5 * min)
      .event('a', 'returned', 'returned-unacknowledged')
      .pass(24 * hour);
    expect(told).toEqual(['0 alarm a #0 0-0', '5 over a #1']);
  });
  test('that latched is chased on though its condition went', () => {
    const { told } = new Scene()
      .raise('a')
      .pass(5 * min)
      .event('a', 'returned', 'latched-unacknowledged')
      .pass(6 * min);
    expect(told).toEqual(['0 alarm a #0 0-0', '10 again a #1 1-1']);
  });
  test('that was shelved is answered, and begins at the bottom when its shelf ends', () => {
    const { told } = new Scene()
      .raise('a')
      .pass(11 * min)
      .event('a', 'shelved', 'shelved', { by: 'ben' })
      .pass(hour)
      .event('a', 'unshelved', 'unacknowledged', { from: 'shelved' });
    expect(told).toEqual([
      '0 alarm a #0 0-0',
      '10 again a #1 1-1',
      '11 answered a #2 ben',
      '71 again a #3 0-0',
    ]);
  });
  test('that does not improve is told again to all who heard, acknowledged or not', () => {
    const { told } = new Scene()
      .raise('a')
      .pass(11 * min)
      .event('a', 'realarmed', 'unacknowledged')
      .acknowledge('a')
      .pass(20 * min)
      .event('a', 'realarmed', 'unacknowledged', { from: 'acknowledged' });
    expect(told).toEqual([
      '0 alarm a #0 0-0',
      '10 again a #1 1-1',
      '11 again a #2 0-1',
      '11 answered a #3 anna',
      '31 again a #4 0-0',
    ]);
  });
  test('passed on, or told to nobody who can be reached, goes to the next at once', () => {
    const { told } = new Scene()
      .raise('a')
      .pass(min)
      .event('a', 'passed-on', 'unacknowledged')
      .pass(10_000);
    expect(told).toHaveLength(2);
    expect(told[1]).toMatch(/again a #1 1-1$/);
  });
  test('its number goes on after it was answered, so that no key comes twice', () => {
    const scene = new Scene()
      .raise('a')
      .acknowledge('a')
      .event('a', 'realarmed', 'unacknowledged', {
        from: 'acknowledged',
      });
    const steps = scene.told.map((line) => line.match(/#(\d+)/)?.[1]);
    expect(new Set(steps).size).toBe(steps.length);
  });
});

test('how long somebody has: half the time to respond, within two minutes and an hour', () => {
  expect(escalateAfterMs(plain, 'high', null)).toBe(5 * min);
  expect(escalateAfterMs(plain, 'high', min)).toBe(2 * min);
  expect(escalateAfterMs(plain, 'low', 8 * hour)).toBe(hour);
  expect(escalateAfterMs(plain, 'low', 30 * min)).toBe(15 * min);
  expect(escalateAfterMs(quiet, 'high', hour)).toBe(10 * min);
});

describe('at night', () => {
  const night = (): Scene => {
    const scene = new Scene(quiet);
    scene.now = Date.UTC(2026, 10, 25, 23);
    return scene;
  };
  const morning = (Date.UTC(2026, 10, 26, 6) - start) / min;
  test('only high priority and what is highly managed buzzes', () => {
    const scene = night()
      .raise('m')
      .raise('l', { priority: 'low' })
      .raise('h', { priority: 'high' })
      .raise('x', { priority: 'low', highlyManaged: true });
    expect(scene.told.map((line) => line.split(' ')[2])).toEqual(['h', 'x']);
  });
  test('the rest is told when the quiet hours end', () => {
    const { told } = night()
      .raise('m')
      .pass(8 * hour);
    expect(told[0]).toBe(`${morning} alarm m #0 0-0`);
  });
  test('what was over by then stands in the digest and calls nobody', () => {
    const { told } = night()
      .raise('m')
      .pass(hour)
      .event('m', 'returned', 'returned-unacknowledged')
      .pass(9 * hour);
    expect(told).toEqual([`${morning + 60} digest l/s/m:quiet:1`]);
  });
  test('one that becomes high waits no longer', () => {
    const scene = night().raise('m').pass(hour);
    scene.event('m', 'realarmed', 'unacknowledged', { priority: 'high' });
    expect(scene.told).toHaveLength(1);
  });
});

describe('alarms that come and go', () => {
  test('are for the digest, once a day, with their count', () => {
    const scene = new Scene();
    for (let i = 0; i < 5; i += 1)
      scene.raise(`c${i}`, { rule: 'l/s/c', nuisance: 'chattering' }).pass(10_000);
    expect(scene.told).toEqual([]);
    scene.pass(24 * hour);
    expect(scene.told).toEqual([`${22 * 60} digest l/s/c:chattering:5`]);
  });
  test('one that stands after all is told for the first time', () => {
    const scene = new Scene().raise('c', { nuisance: 'fleeting' }).pass(min);
    scene.event('c', 'realarmed', 'unacknowledged');
    expect(scene.told).toEqual(['1 alarm c #0 0-0']);
  });
  test('what is highly managed is told all the same', () => {
    const scene = new Scene().raise('c', { nuisance: 'chattering', highlyManaged: true });
    expect(scene.told).toEqual(['0 alarm c #0 0-0']);
  });
});

describe('a flood', () => {
  const flood = (n: number): Scene => {
    const scene = new Scene();
    for (let i = 0; i < n; i += 1) scene.raise(`f${i}`).pass(10_000);
    return scene;
  };
  test('the eleventh alarm in ten minutes begins one message for all that wait for an answer', () => {
    const { told, plan } = flood(14);
    expect(told.slice(0, 10).every((line) => line.includes('alarm f'))).toBe(true);
    expect(told.slice(10)).toEqual([`${100 / 60} flood flood@${start + 100_000} #0 0-0`]);
    const group = plan.all().find((one) => one.members !== undefined);
    expect(group?.members).toHaveLength(14);
  });
  test('is chased as soon as the first of its alarms would have been', () => {
    const { told } = flood(12).pass(9 * min);
    expect(told[11]).toMatch(/^2.8\d+ flood flood@\d+ #1 0-0 silent$/);
    expect(told[12]).toMatch(/^10 flood flood@\d+ #2 1-1$/);
  });
  test('a worse one is told at once, one alike is not, a highly managed one is told alone', () => {
    const scene = flood(12);
    const before = scene.told.length;
    scene.raise('same');
    expect(scene.told).toHaveLength(before);
    scene.raise('worse', { priority: 'high' });
    scene.raise('fire', { priority: 'high', highlyManaged: true });
    expect(scene.told.slice(before).map((line) => line.split(' ').slice(1, 3).join(' '))).toEqual([
      `flood flood@${start + 100_000}`,
      'alarm fire',
    ]);
  });
  test('is answered when each of its alarms is, and not before', () => {
    const scene = flood(11);
    for (let i = 0; i < 10; i += 1) scene.acknowledge(`f${i}`);
    expect(scene.told.filter((line) => line.includes('answered flood'))).toEqual([]);
    scene.acknowledge('f10');
    expect(scene.told.filter((line) => line.includes('answered flood'))).toHaveLength(1);
    const { length } = scene.told;
    scene.pass(24 * hour);
    expect(scene.told).toHaveLength(length);
  });
  test('after it alarms are told singly again', () => {
    const scene = flood(12)
      .pass(20 * min)
      .raise('later');
    expect(scene.told.at(-1)).toMatch(/alarm later #0/);
  });
  test('begun again from what is written down it goes on as it was', () => {
    const [one, other] = [flood(12), flood(12).restart()];
    for (const scene of [one, other])
      scene
        .raise('x')
        .pass(30 * min)
        .acknowledge('x')
        .pass(hour);
    expect(other.told).toEqual(one.told);
  });
});

describe('whatever happens', () => {
  const word = fc.constantFrom(
    'raise',
    'acknowledge',
    'return',
    'realarm',
    'shelve',
    'pass',
    'passLong',
    'restart',
  );
  const name = fc.integer({ min: 0, max: 14 });
  const priority = fc.constantFrom<Priority>('high', 'medium', 'low');
  test('an alarm without an answer has a step to come, no key comes twice, silence is silence', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(word, name, priority), { maxLength: 120 }), (events) => {
        const scene = new Scene();
        const open = new Map<number, { id: string; unanswered: boolean; priority: Priority }>();
        let n = 0;
        for (const [what, i, of] of events) {
          const known = open.get(i);
          if (what === 'raise' && (known === undefined || !known.unanswered)) {
            n += 1;
            open.set(i, { id: `${i}@${n}`, unanswered: true, priority: of });
            scene.raise(`${i}@${n}`, { rule: `l/s/${i}`, priority: of });
          } else if (what === 'pass') scene.pass(30_000);
          else if (what === 'passLong') scene.pass(15 * min);
          else if (what === 'restart') scene.restart();
          else if (what !== 'raise' && known?.unanswered === true) {
            known.unanswered = what === 'realarm';
            if (what === 'acknowledge') scene.acknowledge(known.id);
            else if (what === 'return')
              scene.event(known.id, 'returned', 'returned-unacknowledged');
            else if (what === 'shelve') scene.event(known.id, 'shelved', 'shelved');
            else scene.event(known.id, 'realarmed', 'unacknowledged', { priority: known.priority });
          }
          check(scene, open);
        }
      }),
    );
  });

  function check(scene: Scene, open: Map<number, { id: string; unanswered: boolean }>): void {
    const keys = scene.told.map((line) => line.split(' ').slice(2, 4).join(' '));
    expect(new Set(keys).size).toBe(keys.length);
    for (const { id, unanswered } of open.values()) {
      const chase = scene.plan.chase(id);
      const group = chase?.group == null ? null : scene.plan.chase(chase.group);
      const due = chase?.waits === 'group' ? group?.dueMs : chase?.dueMs;
      if (unanswered) expect(due, id).toEqual(expect.any(Number));
      else expect(chase?.dueMs ?? null, id).toBeNull();
    }
  }
});

test('a milder alarm climbs no further while a worse one of the same reading stands', () => {
  const scene = new Scene().raise('early').raise('limit', { priority: 'high' });
  scene.outranked.add('early');
  scene.pass(60 * min);
  expect(scene.told.filter((each) => each.includes(' early '))).toHaveLength(1);
  expect(scene.told.filter((each) => each.includes(' limit ')).length).toBeGreaterThan(2);
  scene.outranked.clear();
  scene.pass(60 * min);
  expect(scene.told.filter((each) => each.includes(' again early ')).length).toBeGreaterThan(0);
});
