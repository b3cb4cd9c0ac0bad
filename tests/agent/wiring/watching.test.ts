/** What is watched counts only what is judged and told: never heard, put aside and not worked out are said. */
import { describe, expect, test } from 'vitest';
import { coverageSchema } from '#agent/web/contract.ts';
import { coverageNow, unheardSignals } from '#agent/wiring/watching.ts';
import { freshFolder } from '../store/folders.ts';
import { Works } from './works.ts';

const plain = 'payload: { kind: plain }';
const said = 'consequence: It burns., actions: [Leave.]';

/** One rule alone, and one that needs two signals: the second stays silent. */
const two = `
l:
  o:
    kind: custom
    signals:
      surface: { topic: o/surface, ${plain}, unit: Cel, resolution: 0.1 }
      air: { topic: o/air, ${plain}, unit: Cel, resolution: 0.1 }
      hand: { by_hand: true, unit: Cel }
    rules:
      hot: { kind: band, signal: surface, high: 92 Cel, on_delay: 0 s, priority: high, ${said} }
      apart: { kind: disagree, signals: [surface, air], allowed: 5 K, steady: 1 K, steady_for: 1 min, on_delay: 0 s,
        priority: high, ${said} }
      entered: { kind: band, signal: hand, high: 92 Cel, on_delay: 0 s, priority: low, ${said} }
`;

const seen = (agent: Works) => {
  const view = coverageNow(agent.core, agent.core.live.engineNow!);
  expect(coverageSchema.safeParse(JSON.parse(JSON.stringify(view))).error).toBeUndefined();
  return view;
};
const hazard = (agent: Works, rule: string) =>
  seen(agent)
    .stations.flatMap(({ hazards }) => hazards)
    .find(({ rules }) => rules.some((each) => each.endsWith(`/${rule}`)))!;

const take = (
  agent: Works,
  verb: 'shelve' | 'remove-from-service' | 'return-to-service',
  occurrence = 'l/o/hot',
) => {
  void agent.core.live.command({
    kind: 'command',
    verb,
    occurrence,
    by: 'p1',
    reason: 'new gauge',
    ...(verb === 'shelve' ? { untilMs: agent.nowMs + 600_000 } : {}),
  } as Parameters<typeof agent.core.live.command>[0]);
  agent.pass(200);
};

describe('never heard', () => {
  test('is not watched, and said with the topic and what to do', () => {
    const agent = new Works(freshFolder(), two).pass(60_000);
    expect(seen(agent)).toMatchObject({ watched: 0, not_watched: 3, unjudged: 0 });
    expect(hazard(agent, 'hot')).toMatchObject({
      state: 'not-watched',
      unheard: ['l/o/surface'],
      why: expect.stringContaining('l/o/surface has never been heard'),
    });
    expect(unheardSignals(agent.core).map(({ signal }) => signal)).toEqual([
      ...['l/o/air', 'l/o/hand', 'l/o/surface'],
    ]);
    const [air, hand] = seen(agent).unheard!;
    expect(air).toMatchObject({ signal: 'l/o/air', topic: 'o/air', because: 'never-heard' });
    expect(air!.fix).toContain('o/air');
    expect(hand).toMatchObject({ topic: null, because: 'never-entered' });
  });
  test('a rule of two signals is not watched until both were heard', () => {
    const agent = new Works(freshFolder(), two).send('o/surface', 20);
    expect(hazard(agent, 'hot').state).toBe('watched');
    expect(hazard(agent, 'apart')).toMatchObject({
      state: 'not-watched',
      unheard: ['l/o/air'],
    });
    agent.send('o/air', 20);
    expect(hazard(agent, 'apart')).toMatchObject({ state: 'watched', unheard: [] });
    expect(hazard(agent.restart(), 'apart').state, 'it was heard before the restart').toBe(
      'watched',
    );
  });
  test('what came and cannot be used was heard: it is without a usable reading', () => {
    const agent = new Works(freshFolder(), two).send('o/surface', 'warm');
    expect(hazard(agent, 'hot')).toMatchObject({ state: 'unjudged', unheard: [] });
  });
  test('what came too old to be judged is not called silent', () => {
    const lines = two.replace(
      `topic: o/surface, ${plain}`,
      'topic: o/surface, payload: { kind: json, value: /v, time: /t }',
    );
    const agent = new Works(freshFolder(), lines).pass(1_000);
    agent.send('o/surface', JSON.stringify({ v: 20, t: agent.nowMs - 86_400_000 }));
    expect(seen(agent).unheard!.find(({ signal }) => signal === 'l/o/surface')).toMatchObject({
      because: 'too-late',
      says: expect.stringContaining('too old to be judged'),
    });
  });
  test('one of a median that can do without it leaves the rest watched, and is said', () => {
    const lines = `
l:
  o:
    kind: custom
    signals:
      a: { topic: a, ${plain}, unit: Cel }
      b: { topic: b, ${plain}, unit: Cel }
      c: { topic: c, ${plain}, unit: Cel }
      d: { topic: d, ${plain}, unit: Cel }
    rules:
      odd: { kind: stray, signals: [a, b, c, d], limit: 5 K, on_delay: 0 s, priority: low, ${said} }
`;
    const agent = new Works(freshFolder(), lines).send('a', 1).send('b', 1).send('c', 1);
    expect(hazard(agent, 'odd')).toMatchObject({ state: 'watched', unheard: ['l/o/d'] });
  });
});

describe('a wildcard of which no place has been heard', () => {
  const residue = `
l:
  r:
    kind: residue
    rules: { at-limit: { site_limit: 92 Cel }, early: { high: 72 Cel } }
    signals:
      surface: { topic: "r/+/t", names: [place], ${plain}, unit: Cel, expect_every: 10 s }
      air: { topic: "r/+/air", names: [place], ${plain}, unit: Cel }
`;
  const of = (agent: Works, words: string) =>
    seen(agent).stations[0]!.hazards.find(({ hazard: each }) => each.startsWith(words))!;
  test('stands under never heard, with its topic, and coverage says so', () => {
    const agent = new Works(freshFolder(), residue).pass(1_000);
    const surface = seen(agent).unheard!.find(({ signal }) => signal === 'l/r/surface');
    expect(surface).toMatchObject({
      topic: 'r/+/t',
      because: 'no-place-heard',
      to_people: true,
      fix: expect.stringContaining('r/+/t'),
    });
    expect(surface!.rules).toContain('l/r/early');
    expect(of(agent, 'Dried residue on a hot')).toMatchObject({
      state: 'not-watched',
      unheard: ['l/r/surface'],
      why: expect.stringContaining('No place of l/r/surface has been heard yet.'),
    });
    expect(of(agent, 'Residue reacts').unheard!.toSorted()).toEqual(['l/r/air', 'l/r/surface']);
    agent.send('r/floor/t', 40).pass(1_000);
    expect(seen(agent).unheard!.map(({ signal }) => signal)).toEqual(['l/r/air']);
    expect(of(agent, 'Dried residue on a hot')).toMatchObject({ state: 'watched', unheard: [] });
  });
  test('what is worked out is said for each place; that it does not run only while none does', () => {
    const bench = `
l:
  b:
    kind: custom
    signals:
      t: { topic: b/+/t, names: [cell], ${plain}, unit: Cel }
      rh: { topic: b/+/rh, names: [cell], ${plain}, unit: "%" }
    derived:
      dp: { kind: dew-point, inputs: { temperature: t, humidity: rh } }
`;
    const agent = new Works(freshFolder(), bench).pass(1_000);
    const points = () => seen(agent).stations[0]!.worked_out!;
    expect(points()).toMatchObject([
      { signal: 'l/b/dp', now: false, why: 'No place of it has been heard yet.' },
    ]);
    agent.send('b/1/t', 20).send('b/1/rh', 50).pass(1_000);
    expect(points()).toMatchObject([
      { signal: 'l/b/dp-1', from: ['l/b/t-1', 'l/b/rh-1'], now: true, why: null },
    ]);
  });
});

describe('put aside', () => {
  test('a hazard whose only rule is out of service is not watched: by whom, since when, until when', () => {
    const agent = new Works(freshFolder(), two).send('o/surface', 20).send('o/air', 20);
    expect(seen(agent).watched).toBe(2);
    const since = agent.core.live.engineNow!;
    take(agent, 'remove-from-service');
    expect(seen(agent)).toMatchObject({ watched: 1, not_watched: 2 });
    const off = hazard(agent, 'hot');
    expect(off).toMatchObject({
      state: 'not-watched',
      aside: [{ rule: 'l/o/hot', state: 'out-of-service', by: 'p1', reason: 'new gauge' }],
    });
    expect(off.aside![0]!.since).toBeGreaterThanOrEqual(since);
    expect(off.aside![0]!.until).toBeNull();
    expect(off.why).toMatch(
      /^l\/o\/hot is out of service: put there by p1, since 2026-11-25T09:.*Z, until somebody brings it back: new gauge\.$/,
    );
    take(agent, 'return-to-service');
    expect(hazard(agent, 'hot')).toMatchObject({ state: 'watched', aside: [] });
  });
  test('what only a rule out of service waits for is not asked for', () => {
    const agent = new Works(freshFolder(), two).send('o/surface', 20).send('o/air', 20);
    const names = () => unheardSignals(agent.core).map(({ signal }) => signal);
    expect(names()).toEqual(['l/o/hand']);
    take(agent, 'remove-from-service', 'l/o/entered');
    expect(names()).toEqual([]);
  });
  test('a shelved one too, until its end', () => {
    const agent = new Works(freshFolder(), two).send('o/surface', 99).send('o/air', 99);
    take(agent, 'shelve');
    const shelved = hazard(agent, 'hot');
    expect(shelved).toMatchObject({
      state: 'not-watched',
      aside: [{ state: 'shelved', by: 'p1' }],
    });
    expect(shelved.why).toMatch(/shelved: .*until 2026-11-25T09:.*Z: new gauge\.$/);
    agent.pass(700_000);
    expect(hazard(agent, 'hot').state).toBe('watched');
  });
  test('suppressed by design, with the site’s reason', () => {
    const lines = two.replace(
      'hot: { kind: band,',
      'hot: { suppress_while: { signal: air, high: 10 Cel, because: the line stands }, kind: band,',
    );
    const agent = new Works(freshFolder(), lines).send('o/surface', 20).send('o/air', 5);
    expect(hazard(agent, 'hot')).toMatchObject({
      state: 'not-watched',
      aside: [{ state: 'suppressed-by-design', by: null, reason: 'the line stands' }],
    });
    agent.send('o/air', 20);
    expect(hazard(agent, 'hot').state).toBe('watched');
  });
  test('beside a rule that is judged the hazard stays watched, and what is missing is said', () => {
    const lines = `
l:
  s:
    kind: adhesive-store
    signals:
      wall: { topic: wall, ${plain}, unit: Cel }
      bottom: { topic: bottom, ${plain}, unit: Cel }
`;
    const agent = new Works(freshFolder(), lines).send('wall', 20);
    const cold = seen(agent)
      .stations[0]!.hazards.filter(({ state }) => state === 'watched')
      .find(({ unheard }) => unheard!.length > 0)!;
    expect(cold.unheard).toEqual(['l/s/bottom']);
    expect(cold.why).toContain('l/s/bottom has never been heard');
  });
});

describe('derived signals', () => {
  const lines = `
l:
  s:
    kind: adhesive-store
    signals:
      air: { topic: air, ${plain}, unit: Cel }
      humidity: { topic: humidity, ${plain}, unit: "%" }
`;
  const dew = (agent: Works) =>
    seen(agent).stations[0]!.worked_out!.find(({ signal }) => signal === 'l/s/air-dew-point')!;
  test('say what they could not work out, and why', () => {
    const agent = new Works(freshFolder(), lines).pass(2_000);
    expect(dew(agent)).toMatchObject({ now: false, from: ['l/s/air', 'l/s/humidity'] });
    expect(dew(agent).why).toBe('l/s/air has never been heard. l/s/humidity has never been heard.');
    agent.send('air', 20).send('humidity', 50).pass(2_000);
    expect(dew(agent)).toMatchObject({ now: true, why: null });
    agent.send('humidity', 0).pass(2_000);
    expect(dew(agent).now).toBe(false);
    expect(dew(agent).why).toMatch(/^[A-Z].*\.$/);
  });
});
