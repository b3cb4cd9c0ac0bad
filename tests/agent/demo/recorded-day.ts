/**
 * A day of the demo line, recorded once for all tests that look at it: 22.5 ordinary hours, the way
 * into the show, and its hour, at 10 s, through the agent's own core.
 */
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { readSite } from '#agent/site/read-site.ts';
import { compileSource, type SiteSource } from '#agent/site/revision.ts';
import { makeDemoHistory } from '#agent/wiring/demo-folder.ts';
import type { Effect } from '#rules/input.ts';
import type { RuleCard } from '#rules/plan/card.ts';
import { top } from '../../tidy/source.ts';

export const demoSeed = 1;
const hourMs = 3_600_000;
export const dayMs = Date.UTC(2026, 10, 25);
export const showAtMs = dayMs + 23 * hourMs;

export async function demoSource(): Promise<SiteSource> {
  const read = await readSite(join(top, 'docs/examples/demo-works/site.yaml'));
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.source;
}

/** What the wildcards of the site take. */
export const instances = {
  'bushings-1/residue-1/surface': ['floor', 'shroud', 'filter'],
  'bushings-1/residue-1/air': ['floor', 'shroud', 'filter'],
  'bushings-1/residue-1/stack': ['rack-7', 'rack-8'],
};

export type Transition = Extract<Effect, { kind: 'transition' }>;

export interface RecordedDay {
  readonly folder: string;
  readonly source: SiteSource;
  readonly effects: readonly Effect[];
  readonly samples: number;
  readonly cards: ReadonlyMap<string, RuleCard>;
  readonly unitOf: (signal: string) => string;
}

export async function recordDay(seed = demoSeed): Promise<RecordedDay> {
  const source = await demoSource();
  const folder = mkdtempSync(join(tmpdir(), 'forebond-demo-day-'));
  const effects: Effect[] = [];
  const { samples } = await makeDemoHistory({
    folder,
    source,
    version: '0.0.0',
    seed,
    showAtMs,
    lengthMs: showAtMs - dayMs,
    untilMs: () => showAtMs + hourMs,
    stopped: () => false,
    heard: (effect) => effects.push(effect),
    warn: (facts, message) => {
      // One sensor of the line breaks and says so; nothing else is refused.
      if ('reason' in facts && facts.reason === 'not-finite') return;
      throw new Error(`${message} ${JSON.stringify(facts)}`);
    },
  });
  const compiled = compileSource(source, instances);
  const units = new Map(compiled.plan.signals.map(({ id, unit }) => [id, unit]));
  return {
    folder,
    source,
    effects,
    samples,
    cards: new Map(compiled.rules.map((card) => [card.id, card])),
    unitOf: (signal) => units.get(signal) ?? '',
  };
}

export const isTransition = (effect: Effect): effect is Transition => effect.kind === 'transition';

/** The three bands of the page. */
export function bandOf(
  card: RuleCard,
): 'people can be hurt' | 'before the shift ends' | 'can wait' {
  if (card.hazardToPeople) return 'people can be hurt';
  return card.priority[0] === 'low' ? 'can wait' : 'before the shift ends';
}
