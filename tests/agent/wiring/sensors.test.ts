/** What people are told of sensors: raw ones, overdue calibrations, messages nobody can use. */
import { describe, expect, test } from 'vitest';
import { intakeCauses } from '#agent/intake/cause.ts';
import type { RefusedTopic } from '#agent/intake/refused.ts';
import { isRefusal, markCauses } from '#agent/intake/refused.ts';
import { coverageSchema, signalSchema } from '#agent/web/contract.ts';
import { refusedSchema } from '#agent/web/refused-contract.ts';
import { overdueCalibrations } from '#agent/wiring/coverage-view.ts';
import { type HealthFacts, healthParts } from '#agent/wiring/health.ts';
import { refusedLine, refusedView } from '#agent/wiring/refused-view.ts';
import { signalViews } from '#agent/wiring/signal-views.ts';
import { coverageNow } from '#agent/wiring/watching.ts';
import { quality } from '#rules/signal/quality.ts';
import { freshFolder } from '../store/folders.ts';
import { Works } from './works.ts';

const plain = 'payload: { kind: plain }';
const oven = `
l:
  s:
    kind: custom
    signals:
      metal: { topic: tc, ${plain}, unit: mV, resolution: 0.001, expect_every: 10 s,
        sensor: { kind: thermocouple, type: K, cold_junction: cabinet, class: 2 } }
      cabinet: { topic: cj, ${plain}, unit: Cel,
        calibrated: "2025-11-25", calibrate_every: 12 mo }
      pot: { topic: pot, ${plain}, unit: mA,
        sensor: { kind: current-loop, from: 0 bar, to: 6 bar } }
`;
/** The last hour of the day on which the calibration of the cabinet still holds. */
const lateOnLastDay = Date.UTC(2026, 10, 25, 23, 59, 30);

const viewOf = (agent: Works, id: string) => {
  const view = signalViews(agent.core).find((each) => each.id === id)!;
  expect(signalSchema.safeParse(JSON.parse(JSON.stringify(view))).error).toBeUndefined();
  return view;
};

describe('raw sensors', () => {
  test('millivolts in, degrees out, with what its class allows', () => {
    const agent = new Works(freshFolder(), oven).send('cj', 25).send('tc', 5);
    expect(viewOf(agent, 'l/s/metal')).toMatchObject({
      unit: 'Cel',
      value: 146.574,
      quality: { grade: 'good' },
      sensor: { kind: 'thermocouple', sends: 'mV', tolerance: 2.5 },
    });
    expect(viewOf(agent, 'l/s/cabinet').sensor).toBeNull();
    expect(viewOf(agent, 'l/s/pot').sensor).toMatchObject({ sends: 'mA', tolerance: null });
  });
  test('the cold junction and a loop’s fault are known after a restart and after a kill', () => {
    for (const end of ['restart', 'killed'] as const) {
      const agent = new Works(freshFolder(), oven).send('cj', 25).send('pot', 3.5);
      agent[end]().send('tc', 5).pass(2_000).send('pot', 3.5);
      expect(viewOf(agent, 'l/s/metal')).toMatchObject({ value: 146.574 });
      const pot = agent.open['l/s/pot']!.map((kept) => kept.quality);
      expect(pot).toEqual([quality.loopFaultUnsettled, quality.loopFaultLow]);
    }
  });
});

describe('a calibration', () => {
  test('is overdue once its last day is over by the site’s clock', () => {
    const agent = new Works(freshFolder(), oven, lateOnLastDay).send('cj', 25, 100);
    const overdue = (): string[] =>
      overdueCalibrations(agent.core.plans.now.coverage, agent.core.live.engineNow!);
    expect(overdue()).toEqual([]);
    expect(viewOf(agent, 'l/s/cabinet').quality).toEqual({ grade: 'good', cause: null });
    agent.pass(30_000).send('cj', 25, 100);
    expect(overdue()).toEqual(['l/s/cabinet']);
    expect(viewOf(agent, 'l/s/cabinet')).toMatchObject({
      value: 25,
      quality: { grade: 'uncertain', cause: 'calibration overdue' },
    });
    // Beside it the thermocouple is uncertain too, and has its value.
    expect(viewOf(agent.send('tc', 5), 'l/s/metal')).toMatchObject({
      value: 146.574,
      quality: { grade: 'uncertain' },
    });
  });
  test('stands in the coverage of its station', () => {
    const { core } = new Works(freshFolder(), oven);
    const seen = (at: number) => {
      const view = coverageNow(core, at);
      expect(coverageSchema.safeParse(view).error).toBeUndefined();
      return view.stations[0]!.calibrations;
    };
    const row = { signal: 'l/s/cabinet', calibrated: '2025-11-25', last_day: '2026-11-25' };
    expect(seen(lateOnLastDay)).toEqual([{ ...row, overdue: false }]);
    expect(seen(lateOnLastDay + 30_000)).toEqual([{ ...row, overdue: true }]);
  });
});

describe('refused messages', () => {
  test('each with its reason in words, until one can be used', () => {
    const agent = new Works(freshFolder(), oven).send('cj', 'hot').send('tc', 'NaN');
    const topics = refusedView(agent.core.intake.refused());
    expect(refusedSchema.safeParse({ topics }).error).toBeUndefined();
    expect(topics).toMatchObject([
      { topic: 'tc', standing: true, messages: [{ reason: 'not-finite', begins: 'NaN' }] },
      { topic: 'cj', standing: true, messages: [{ signal: 'l/s/cabinet', begins: 'hot' }] },
    ]);
    agent.send('cj', 25);
    expect(refusedView(agent.core.intake.refused())[1]).toMatchObject({ standing: false });
  });
  test('of one that is too large nobody takes what was read for its size', () => {
    const agent = new Works(freshFolder(), oven).send('cj', '9'.repeat(70_638));
    const [{ topic, messages }] = agent.core.intake.refused() as [RefusedTopic];
    expect(refusedView([{ topic, messages, count: 1, standing: true }])).toMatchObject([
      { messages: [{ why: 'The message is more than 64 KiB; not read further.' }] },
    ]);
    const [facts] = refusedLine(topic, messages[0]!);
    expect(facts).not.toHaveProperty('bytes');
    expect(facts).toMatchObject({ bytes_read: expect.any(Number) });
  });
  test('every reason has words of its own', () => {
    const causes = [...intakeCauses.filter(isRefusal), ...markCauses];
    const unsaid = { lookedFor: null, found: null, words: null };
    const told = causes.map(
      (cause) =>
        refusedView([
          {
            topic: 'a',
            count: 1,
            standing: true,
            messages: [{ at: 0, cause, signal: null, from: null, ...unsaid, begins: '', bytes: 0 }],
          },
        ])[0]!.messages[0]!,
    );
    for (const { why, fix } of told) {
      expect(why).toMatch(/^[A-Z].*\.$/);
      expect(why).not.toMatch(/^It was refused/);
      expect(fix).toMatch(/^[A-Z].*\.$/);
    }
    expect(new Set(told.map(({ why }) => why)).size).toBe(causes.length);
  });
});

test('health says both, a few names and no more', () => {
  const facts: HealthFacts = {
    version: '1',
    uptimeS: 1,
    diskRefusal: null,
    choreRefusal: null,
    diskFreeBytes: null,
    diskFreeBytesMin: 0,
    clockInDoubt: false,
    clockSet: null,
    sealingFailed: null,
    findings: [],
    recordLost: false,
    doorOpen: true,
    tellingNote: null,
    devicesProblem: null,
    rulesOff: [],
    siteNote: null,
    siteUnusable: null,
    turnAgeMs: 0,
    unjudgedRules: 0,
    unheardSignals: [],
    overdueCalibrations: [],
    refusedTopics: [],
  };
  const sensors = (more: Partial<HealthFacts>) => {
    const { parts, notes } = healthParts({ ...facts, ...more });
    return [parts.sensors, notes.sensors];
  };
  expect(sensors({})).toEqual(['good', undefined]);
  expect(sensors({ refusedTopics: ['a', 'b\u001b[2J', 'c', 'd', 'e'] })).toEqual([
    'maintenance-required',
    'Messages that cannot be used come on a, b·[2J, c and 2 more; GET /api/refused says why.',
  ]);
  expect(sensors({ unheardSignals: ['l/s/a', 'l/s/b', 'l/s/c', 'l/s/d'] })).toEqual([
    'maintenance-required',
    'Never heard: l/s/a, l/s/b, l/s/c and 1 more; what needs them is not watched. GET /api/coverage says where they should come.',
  ]);
  expect(sensors({ overdueCalibrations: ['l/s/x'] })[1]).toBe(
    'Calibration is overdue for l/s/x: their readings are uncertain.',
  );
});
