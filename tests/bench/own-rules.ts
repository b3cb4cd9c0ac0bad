/**
 * What a rule of the site's own costs a sample, beside a built-in one that judges the same: in a
 * replay, where it is guarded, and live, where each call is timed and watched besides.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { CallWatch } from '../../agent/site/extensions/watch.ts';
import { compileSource, type SiteSource } from '../../agent/site/revision.ts';
import { ExtensionDesk } from '../../agent/wiring/extension-desk.ts';
import { Engine } from '../../rules/engine.ts';
import type { Plan } from '../../rules/plan/plan.ts';
import { SampleBatch } from '../../rules/signal/sample.ts';
import { type Figure, median } from './report.ts';

const signals = 50;
const rulesEach = 4;
const rounds = 4_000;

const text = `export default (forebond) => ({ kinds: [{
  name: 'over', version: 1, summary: 'The value is above its limit.',
  written: forebond.settings({ high: forebond.quantity('Its limit.') }),
  compile: (read) => ({ high: read.limit('high') }),
  begin: () => ({ value: 0, at: 0 }),
  sample: ({ high }, memory, { value, at }) => {
    memory.value = value;
    memory.at = at;
    return value > high ? 1 : 0;
  },
  gap: () => {},
  shift: (memory, deltaMs) => { memory.at += deltaMs; },
  evidence: ({ high }, memory) => ({ value: memory.value, at: memory.at, limit: high, side: 'high' }),
  sentence: () => 'It reads {$value}, over {$limit}.',
}] });`;

function siteOf(kind: 'band' | 'over' | null): SiteSource {
  const rule = (i: number) => ({
    kind: kind ?? '',
    signal: `s-${Math.floor(i / rulesEach)}`,
    high: '90 Cel',
    ...(kind === 'band' ? { on_delay: '0 s', deadband: '0 K' } : {}),
    priority: 'low' as const,
    consequence: 'None.',
    actions: ['None.'],
  });
  const count = kind === null ? 0 : signals * rulesEach;
  const names = Array.from({ length: signals }, (_, i) => `s-${i}`);
  const bench = {
    kind: 'custom',
    signals: Object.fromEntries(
      names.map((name) => [
        name,
        { topic: `b/${name}`, payload: { kind: 'plain' as const }, unit: 'Cel', resolution: 0.1 },
      ]),
    ),
    rules: Object.fromEntries(Array.from({ length: count }, (_, i) => [`r-${i}`, rule(i)])),
  };
  return {
    site: { site: 'bench', timezone: 'UTC', extensions: ['over.ts'], lines: { b: { bench } } },
    materials: {},
    extensions: { 'over.ts': text },
  };
}

/** Nanoseconds a sample, through an engine that is asked to do nothing but judge. */
function nsASample(plan: Plan): number {
  const engine = Engine.begin(plan, 0, { emit: () => {}, planOf: () => plan });
  const batch = new SampleBatch(signals);
  const began = performance.now();
  for (let round = 1; round <= rounds; round += 1) {
    batch.clear();
    for (let i = 0; i < signals; i += 1)
      batch.push(i, round * 1_000, round * 1_000, 20 + ((round * 7 + i) % 600) / 10, 0, 0);
    engine.feed(batch);
  }
  return ((performance.now() - began) * 1e6) / (rounds * signals);
}

export async function ownRules(): Promise<Figure[]> {
  const folder = mkdtempSync(join(tmpdir(), 'forebond-own-'));
  let at = 0;
  const desk = new ExtensionDesk({
    folder,
    // As live: it is asked what is being judged.
    engine: () => {
      at += 1;
      return { place: { at, turn: 0 }, present: { off: new Map() } } as never;
    },
    row: () => {},
    warn: (facts) => {
      throw new Error(JSON.stringify(facts));
    },
  });
  desk.goLive();
  try {
    return measure(desk);
  } finally {
    await desk.close();
    rmSync(folder, { recursive: true });
  }
}

function measure(live: CallWatch): Figure[] {
  const plans = {
    none: compileSource(siteOf(null), {}).plan,
    band: compileSource(siteOf('band'), {}).plan,
    replayed: compileSource(siteOf('over'), {}).plan,
    live: compileSource(siteOf('over'), {}, live).plan,
  };
  const taken: Record<keyof typeof plans, number[]> = {
    none: [],
    band: [],
    replayed: [],
    live: [],
  };
  for (let turn = 0; turn < 6; turn += 1)
    for (const [name, plan] of Object.entries(plans)) {
      const ns = nsASample(plan);
      if (turn > 0) taken[name as keyof typeof plans].push(ns);
    }
  const none = median(taken.none);
  const aRule = (name: keyof typeof plans): number => (median(taken[name]) - none) / rulesEach;
  const floor = aRule('band');
  return (['replayed', 'live'] as const).map((name) => ({
    name: `own rule, ${name}: cost a sample and rule`,
    budget: 'none; printed',
    floor: `${floor.toFixed(0)} ns a built-in band`,
    figure: `${aRule(name).toFixed(0)} ns`,
    ratio: aRule(name) / floor,
    met: true,
    note: `${signals} signals, ${rulesEach} rules each, ${rounds * signals} samples; ${none.toFixed(0)} ns a sample without rules`,
  }));
}
