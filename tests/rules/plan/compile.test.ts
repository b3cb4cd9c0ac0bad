import { describe, expect, test } from 'vitest';
import { compiled, signalLine } from './site.ts';

const store = (rules = '{}', extra = ''): string => `
l:
  store:
    kind: adhesive-store
    material: adhesive-a
    ${extra}
    signals:
      wall: ${signalLine('w', 'Cel')}
      bottom: ${signalLine('b', 'Cel')}
    rules: ${rules}
`;
const card = (site: ReturnType<typeof compiled>, id: string) =>
  site.rules.find((rule) => rule.id === id);
const settingOf = (site: ReturnType<typeof compiled>, id: string, setting: string) =>
  card(site, id)?.settings.find((each) => each.setting === setting);

describe('where a number comes from', () => {
  test('the station’s own, unconfirmed where the data sheet should give it', () => {
    const site = compiled(store());
    expect(card(site, 'l/store/cold-adhesive')?.readiness).toBe('armed-limit-unconfirmed');
    expect(settingOf(site, 'l/store/cold-adhesive', 'low_low')).toMatchObject({
      written: '5 Cel',
      basis: { mark: 'CP' },
      confirmed: false,
    });
    expect(site.coverage.stations[0]?.unconfirmed[0]?.numbers.map((n) => n.setting)).toEqual([
      'low',
      'low_low',
    ]);
  });
  test('the material sheet over the station’s', () => {
    const site = compiled(store(), {}, { storage_low: '46.4 [degF]', storage_high: '32 Cel' });
    expect(card(site, 'l/store/cold-adhesive')?.readiness).toBe('armed');
    expect(settingOf(site, 'l/store/cold-adhesive', 'low')?.written).toBe('10 Cel');
    expect(settingOf(site, 'l/store/cold-adhesive', 'low_low')).toMatchObject({
      written: '8 Cel',
      basis: { mark: 'DS', source: 'made for this test' },
      confirmed: true,
    });
  });
  test('the site file over both, and for the rules that are alike', () => {
    const rules = '{ cold-adhesive: { low: 9 Cel, low_low: "48 [degF]" } }';
    const site = compiled(store(rules), {}, { storage_low: '4 Cel' });
    expect(site.problems).toEqual([]);
    for (const id of ['l/store/cold-adhesive', 'l/store/cold-adhesive-bottom']) {
      expect(card(site, id)?.readiness).toBe('armed');
      expect(settingOf(site, id, 'low')).toMatchObject({
        written: '9 Cel',
        basis: { mark: 'SITE' },
      });
    }
    // 48 degF is 8.888… Cel: (48 - 32) * 5 / 9, NIST SP 811 Appendix B.
    const settings = site.plan.rules.find((r) => r.id === 'l/store/cold-adhesive')?.settings;
    expect(settings).toMatchObject({ limits: [{ low: 9 }, { low: 8.88888888889 }] });
  });
  test('a label prints the limits the rules have', () => {
    const site = compiled(store('{ cold-adhesive: { low: 9 Cel } }'));
    expect(card(site, 'l/store/freeze-approaching')?.facts).toEqual({
      low: { kind: 'quantity', value: 9, unit: 'Cel' },
      high: { kind: 'quantity', value: 30, unit: 'Cel' },
    });
  });
});

describe('a number nobody may guess', () => {
  const mixer = (rules: string) => `
l:
  m:
    kind: drum-mixer
    signals: { level: ${signalLine('lv', 'mm')} }
    rules: ${rules}
`;
  test('leaves its rule out of the plan and says what it needs', () => {
    const site = compiled(mixer('{}'));
    expect(site.plan.rules.map((rule) => rule.id)).not.toContain('l/m/blade-uncovered');
    expect(card(site, 'l/m/blade-uncovered')?.readiness).toBe('not-armed');
    expect(site.coverage.stations[0]?.notArmed[0]?.needs[0]).toContain('50 mm under');
    const foam = site.coverage.stations[0]?.unwatched.find((h) => h.hazard === 'foam-at-blade');
    expect(foam?.why).toContain('needs the level');
  });
  test('arms it once given', () => {
    const site = compiled(mixer('{ blade-uncovered: { low: 12 cm } }'));
    expect(site.plan.rules[0]?.settings).toMatchObject({ limits: [{ low: 120 }, { low: null }] });
    expect(card(site, 'l/m/blade-uncovered')?.readiness).toBe('armed');
  });
});

describe('the drum mixer', () => {
  const mixer = (signals: string, rules = '{}') => `
l: { m: { kind: drum-mixer, container: drum-7, material: adhesive-a, signals: { ${signals} }, rules: ${rules} } }
`;
  const agitator = `agitator: ${signalLine('a', '/min')}`;
  test('slow leaves standing to stopped; stopped is gated by use where use is known', () => {
    const bare = compiled(mixer(agitator));
    expect(card(bare, 'l/m/agitator-slow')?.gates).toEqual([
      { signal: 'l/m/agitator', low: 5, high: null },
    ]);
    expect(card(bare, 'l/m/agitator-stopped')?.gates).toEqual([]);
    const used = compiled(mixer(`${agitator}, in-use: ${signalLine('u', '1')}`));
    expect(card(used, 'l/m/agitator-stopped')?.gates).toEqual([
      { signal: 'l/m/in-use', low: 1, high: null },
    ]);
    const rule = used.plan.rules.find((r) => r.id === 'l/m/agitator-stopped');
    expect(used.plan.signals[rule?.gates[0]?.signal ?? -1]?.id).toBe('l/m/in-use');
  });
  test('several gates are written in a list, and each must be one', () => {
    const gates = (list: string) =>
      compiled(
        mixer(
          `${agitator}, in-use: ${signalLine('u', '1')}`,
          `{ agitator-stopped: { gate: ${list} } }`,
        ),
      );
    const site = gates('[{ signal: in-use, low: 1 1 }, { signal: agitator, low: 0 /min }]');
    expect(site.problems).toEqual([]);
    expect(card(site, 'l/m/agitator-stopped')?.gates).toEqual([
      { signal: 'l/m/in-use', low: 1, high: null },
      { signal: 'l/m/agitator', low: 0, high: null },
    ]);
    const bad = gates(
      '[{ signal: in-use, low: 1 1 }, { signal: in-uze, low: 1 1 }, { signal: agitator }]',
    );
    const at = ['lines', 'l', 'm', 'rules', 'agitator-stopped', 'gate'];
    expect(bad.problems.map(({ path, problem }) => [path, problem])).toEqual([
      [[...at, 1, 'signal'], 'this station has no signal "in-uze"'],
      [[...at, 2], 'a gate without low and high is always open'],
    ]);
    expect(card(gates('none'), 'l/m/agitator-stopped')?.gates).toEqual([]);
  });
  test('a longer allowed rest moves only the rest rule', () => {
    const site = compiled(mixer(agitator), {}, { max_rest: '90 min' });
    const onDelay = (name: string) => site.plan.rules.find((r) => r.id === `l/m/${name}`)?.settings;
    expect(onDelay('agitator-rest')).toMatchObject({ onDelayMs: 45 * 60_000 });
    expect(onDelay('agitator-stopped')).toMatchObject({ onDelayMs: 10 * 60_000 });
  });
  test('aims half-way between slow and fast', () => {
    const site = compiled(mixer(agitator, '{ agitator-fast: { high: 0.6 Hz } }'));
    expect(site.problems).toEqual([]);
    // 0.6 Hz is 36 a minute; half-way to 20 is 28.
    expect(card(site, 'l/m/agitator-fast')?.facts.target).toEqual({
      kind: 'quantity',
      value: 28,
      unit: '/min',
    });
  });
});

describe('compressed air', () => {
  const air = (signals: string) => `
l: { air: { kind: compressed-air, signals: { ${signals} } } }
`;
  test('judges the coldest pipe only where there is a pipe sensor', () => {
    const without = compiled(air(`pdp: ${signalLine('p', 'Cel')}`));
    expect(card(without, 'l/air/pipe-margin')).toBeUndefined();
    const site = compiled(air(`pdp: ${signalLine('p', 'Cel')}, pipe: ${signalLine('q', 'Cel')}`));
    expect(site.problems).toEqual([]);
    const made = site.plan.derived[0];
    expect(site.plan.signals[made?.signal ?? -1]).toMatchObject({
      id: 'l/air/pipe-margin',
      kind: 'derived',
      unit: 'K',
    });
    expect(made?.inputs.map((i) => site.plan.signals[i]?.id)).toEqual(['l/air/pipe', 'l/air/pdp']);
    expect(made?.compute?.([12, 3])).toBe(9);
    expect(site.plan.rules.find((r) => r.id === 'l/air/pipe-margin')?.settings).toMatchObject({
      limits: [{ low: 10 }, { low: null }],
    });
  });
  test('5.5 bar becomes 550 kPa, and its deadband 20', () => {
    const site = compiled(air(`header: ${signalLine('h', '[psi]')}`));
    expect(site.plan.rules.find((r) => r.id === 'l/air/header-low')?.settings).toMatchObject({
      limits: [{ low: 550, lowHold: 570 }, { low: null }],
      onDelayMs: 30_000,
    });
  });
});

describe('holds, sensors and switching off', () => {
  test('a freeze holds the named container, or the whole store', () => {
    const named = compiled(store('{}', 'container: drum-3'));
    const whole = compiled(store());
    const holdOf = (site: typeof named) =>
      site.plan.rules.find((r) => r.id === 'l/store/freeze-suspected')?.hold;
    expect(holdOf(named)).toEqual({ what: 'container', item: 'drum-3' });
    expect(holdOf(whole)).toEqual({ what: 'container', item: 'l/store' });
  });
  test('losing a sensor is as urgent as what leans on it, at most medium', () => {
    const site = compiled(`
l:
  air:
    kind: compressed-air
    signals:
      pdp: { topic: p, payload: { kind: plain }, unit: Cel, expect_every: 60 s }
      separator-dp: { topic: s, payload: { kind: plain }, unit: bar, expect_every: 60 s }
`);
    const priority = (id: string) => card(site, id)?.priority;
    expect(priority('l/air/lost-pdp')).toEqual(['medium', 'medium']);
    expect(priority('l/air/lost-separator-dp')).toEqual(['low', 'low']);
    expect(compiled(store()).coverage.stations[0]?.silenceUnnoticed).toEqual([
      'l/store/wall',
      'l/store/bottom',
    ]);
  });
  test('a rule switched off is gone from the plan, and coverage says why', () => {
    const off = '{ off: true, reason: the probe is being moved }';
    const site = compiled(
      store(
        `{ cold-adhesive: ${off}, cold-adhesive-bottom: ${off}, freeze-approaching: ${off}, freeze-suspected: ${off}, freeze-suspected-bottom: ${off} }`,
      ),
    );
    expect(site.problems).toEqual([]);
    expect(site.plan.rules.some((rule) => rule.id.includes('freeze'))).toBe(false);
    const freezing = site.coverage.stations[0]?.unwatched.find((h) => h.hazard === 'freezing');
    expect(freezing?.why).toContain('switched off: the probe is being moved');
    expect(site.coverage.stations[0]?.off).toHaveLength(5);
  });
});

test('signals and rules stand in code-unit order, bindings point at them', () => {
  const site = compiled(store());
  for (const list of [site.plan.signals, site.plan.rules, site.rules, site.bindings]) {
    const ids = list.map((each) => each.id);
    expect(ids).toEqual([...ids].sort());
    expect(ids.length).toBeGreaterThan(1);
  }
  for (const binding of site.bindings)
    expect(site.plan.signals[binding.signal ?? -1]?.id).toBe(binding.id);
});

test('the fingerprint follows settings and signal, not gate, priority or words', () => {
  const print = (rules: string) =>
    compiled(store(rules)).plan.rules.find((r) => r.id === 'l/store/cold-adhesive')?.fingerprint;
  const plain = print('{}');
  expect(print('{ cold-adhesive: { priority: high, consequence: It breaks. } }')).toBe(plain);
  expect(print('{ cold-adhesive: { low: 7.0 Cel } }')).toBe(plain);
  expect(print('{ cold-adhesive: { low: 8 Cel } }')).not.toBe(plain);
  expect(print('{ cold-adhesive: { signal: bottom } }')).not.toBe(plain);
});
