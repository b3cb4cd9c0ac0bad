/** The kinds that judge change, as a site file has them: compiled, lived through, told in words. */
import { describe, expect, test } from 'vitest';
import { sayAlarm } from '#rules/alarm/say.ts';
import { ruleKinds } from '#rules/kinds/all.ts';
import { Drive } from '../engine/drive.ts';
import { compiled } from '../plan/site.ts';

const s = 1_000;
const min = 60 * s;

const terms = 'priority: low, consequence: "Scrap.", actions: ["See to it."]';
/** The resolution is in the canonical unit: kPa, mm. */
const signal = (topic: string, unit: string, resolution: number): string =>
  `{ topic: ${topic}, payload: { kind: plain }, unit: "${unit}", resolution: ${resolution} }`;
const bench = (rules: string) => `
l:
  o:
    kind: custom
    signals:
      air: ${signal('a', 'Cel', 0.1)}
      probe: ${signal('p', 'Cel', 0.1)}
      drop: ${signal('d', 'bar', 0.1)}
      film: ${signal('f', 'um', 0.0001)}
      flow: ${signal('w', 'L/min', 0.1)}
      heat: ${signal('h', '1', 1)}
    rules: { ${rules} }
`;
const ramp = `ramp: { kind: rise, signal: air, up: 20 K, per: 1 min, window: 2 min, ${terms} }`;
const torn = `torn: { kind: rise, signal: drop, fall_share: 30 %, window: 10 min, gate: [{ signal: flow, low: 5 L/min }, { signal: heat, low: 1 1 }], ${terms} }`;
const slow = `slow: { kind: drift, signal: air, reference: 80 Cel, sigma: 0.5 K, ${terms} }`;
const panel = `panel: { kind: chart, signal: film, reference: 19 um, sigma: 1 um, ${terms} }`;
const apart = `apart: { kind: disagree, signals: [air, probe], allowed: 5 K, steady: 2 K, steady_for: 10 min, ${terms} }`;

type Values = (ms: number) => Readonly<Record<string, number>>;

/** What was told, as `<minute> <sentence>`, of readings every 10 s. */
function toldOf(rules: string, toMs: number, values: Values): string[] {
  const site = compiled(bench(rules));
  expect(site.problems).toEqual([]);
  const drive = new Drive(site.plan);
  for (let at = 0; at <= toMs; at += 10 * s)
    for (const [name, value] of Object.entries(values(at)))
      drive.offer({ signal: `l/o/${name}`, at, value }).advance(at);
  return drive.effects.flatMap((effect) => {
    if (effect.kind !== 'transition' || effect.transition !== 'raised') return [];
    const card = site.rules.find(({ id }) => id === effect.rule)!;
    const signal = site.plan.signals.find(({ id }) => id === card.signal)!;
    const { unit, digits } = signal;
    const names = { station: 'oven', signal: card.signal, signals: card.signals };
    const subject = { ...names, unit, digits, facts: {}, timezone: 'UTC', container: null };
    const { sentence } = ruleKinds.get(card.kind)!;
    const said = sayAlarm(card.label, sentence, subject, effect.evidence, effect.judged);
    return [`${Math.round(effect.judged / min)} ${said}`];
  });
}

describe('told', () => {
  test('a ramp too steep', () => {
    expect(toldOf(ramp, 3 * min, (ms) => ({ air: 20 + (30 * ms) / min }))).toEqual([
      '1 l/o/air at 50.0 °C, rising 30.0 K in 60 s; 20.0 K is allowed.',
    ]);
  });
  test('a filter that tears while flow and heat are on, and not while one is off', () => {
    const tears =
      (flow: number, heat: number): Values =>
      (ms) => ({
        ...{ flow, heat },
        drop: ms < 20 * min ? 50 : 30,
      });
    expect(toldOf(torn, 40 * min, tears(8, 1))).toEqual([
      '22 l/o/drop at 30.0 kPa: fell by 20.0 kPa from 50.0 kPa within 10 min; 15.0 kPa is allowed.',
    ]);
    expect(toldOf(torn, 40 * min, tears(8, 0))).toEqual([]);
    expect(toldOf(torn, 40 * min, tears(2, 1))).toEqual([]);
  });
  test('a drift', () => {
    const told = toldOf(slow, 60 * min, (ms) => ({ air: 80 + ms / (30 * min) }));
    expect(told).toHaveLength(1);
    expect(told[0]).toMatch(
      /^1\d l\/o\/air has drifted to 80\.5\d* °C, 0\.5\d* K above its usual 80\.0 °C, since 00:00\.$/,
    );
  });
  test('a run of panels', () => {
    const told = toldOf(panel, 2 * min, () => ({ film: 0.0194 }));
    expect(told).toEqual([
      '1 l/o/film: the last 8 readings all lie on one side of 0.0190 mm, the last at 0.0194 mm.',
    ]);
  });
  test('two sensors apart although steady', () => {
    expect(toldOf(apart, 20 * min, () => ({ air: 80, probe: 86.5 }))).toEqual([
      '10 l/o/probe at 86.5 °C and l/o/air at 80.0 °C, 6.5 K apart although steady; 5.0 K is allowed. Go by l/o/probe until a third probe has told which is right.',
    ]);
  });
});

describe('learned anew', () => {
  const learning = (mark: string) =>
    `slow: { kind: drift, signal: air, learn_for: 30 min, least: 1 K, baseline: ${mark}, ${terms} }`;
  const lived = (second: string) => {
    const [before, after] = [learning('"probe 1"'), second].map((rules, i) => ({
      ...compiled(bench(rules)).plan,
      revision: `r${i}`,
    }));
    const drive = new Drive(before!, 0, [after!]);
    const live = (fromMin: number, toMin: number, level: number) => {
      for (let at = fromMin * min; at < toMin * min; at += 10 * s) {
        const value = level + ((at / (10 * s)) % 3) / 10;
        drive.offer({ signal: 'l/o/air', at, value }).advance(at);
      }
    };
    live(0, 40, 80);
    drive.input({ kind: 'site', judged: 40 * min + 1, revision: 'r1' });
    live(41, 60, 90);
    return drive.told.length;
  };
  test('after a change of what the baseline belongs to, and not after another reload', () => {
    expect(lived(learning('"probe 2"'))).toBe(0);
    expect(lived(`${learning('"probe 1"')}, ${ramp}`)).toBe(1);
  });
});

test('what a kind finds wrong is told at its place in the file', () => {
  const wrong = `slow: { kind: drift, signal: air, reference: 80 bar, by: ewmaa, ${terms} }`;
  const { problems } = compiled(bench(wrong));
  expect(problems.map(({ path, problem }) => `${path.at(-1)}: ${problem}`)).toEqual([
    expect.stringMatching(/^by: /),
  ]);
  const unit = `slow: { kind: drift, signal: air, reference: 80 bar, sigma: 1 K, ${terms} }`;
  expect(compiled(bench(unit)).problems.map(({ path }) => path.at(-1))).toContain('reference');
});
