/** A kind of the site's own, made from what a test changes of a sound one, and what was seen of its calls. */
import { ownKindsOf } from '#agent/site/extensions/own-kinds.ts';
import type { CallWatch } from '#agent/site/extensions/watch.ts';
import type { DerivedKind } from '#rules/derive/derived-kind.ts';
import type { RuleKind, Timer } from '#rules/kinds/kind.ts';
import type { SettingsProblem } from '#rules/kinds/settings.ts';
import { settingsReader } from '#rules/kinds/settings-reader.ts';

export interface Seen {
  readonly faults: string[];
  /** Calls that began and did not come back. */
  open: number;
  off: boolean;
  readonly watch: CallWatch;
}

export function seeing(): Seen {
  const seen: Seen = {
    faults: [],
    open: 0,
    off: false,
    watch: {
      enter: () => {
        seen.open += 1;
      },
      leave: () => {
        seen.open -= 1;
      },
      fault: (_, words) => void seen.faults.push(words),
      isOff: () => seen.off,
    },
  };
  return seen;
}

const parts: Readonly<Record<string, string>> = {
  name: "'own'",
  version: '1',
  summary: "'It is above its limit.'",
  written: "forebond.settings({ high: forebond.quantity('Its limit.') })",
  compile: "(read) => ({ limit: read.limit('high') })",
  begin: '() => ({ value: 0 })',
  sample:
    '({ limit }, memory, { value }) => { memory.value = value; return value > limit ? 1 : 0; }',
  gap: '() => {}',
  shift: '() => {}',
  evidence: '(settings, memory) => ({ value: memory.value })',
  sentence: "() => 'It reads {$value}.'",
};

export const ruleText = (changed: Readonly<Record<string, string>> = {}): string => {
  const all = Object.entries({ ...parts, ...changed });
  const lines = all.map(([part, text]) => `    ${part}: ${text},`);
  return ['export default (forebond) => ({', '  kinds: [{', ...lines, '  }],', '});'].join('\n');
};

export interface OwnRule {
  readonly seen: Seen;
  readonly kind: RuleKind;
  readonly settings: unknown;
  readonly problems: readonly SettingsProblem[];
  readonly timer: Timer;
  /** Begun at 1000. */
  readonly memory: unknown;
  /** What it answers to a value at a moment. */
  readonly answers: (value: number, at?: number) => number;
}

export function ownRule(changed: Readonly<Record<string, string>> = {}): OwnRule {
  const seen = seeing();
  const { kinds, problems: wrong } = ownKindsOf({ 'rules/own.ts': ruleText(changed) }, seen.watch);
  const kind = kinds.rules.get('own');
  if (kind === undefined) throw new Error(JSON.stringify(wrong));
  const problems: SettingsProblem[] = [];
  const signal = { unit: 'Cel', digits: 1, expectEveryMs: null };
  const settings = kind.compile(settingsReader({ high: '30 Cel' }, [signal], problems));
  const timer: Timer = { at: null };
  const memory = kind.begin(settings, 1_000, timer);
  const answers = (value: number, at = 2_000): number =>
    kind.sample(settings, memory, { at, judged: at, value, quality: 0, input: 0 }, timer);
  return { seen, kind, settings, problems, timer, memory, answers };
}

export function ownDerived(body: string): { readonly seen: Seen; readonly kind: DerivedKind } {
  const seen = seeing();
  const text = `export default (forebond) => ({ derived: [{
    name: 'own', summary: 'Twice.', unit: 'Cel', digits: 1, source: 'a test',
    inputs: [{ name: 'one', unit: 'Cel', meaning: 'a temperature' }],
    ${body} }] });`;
  const { kinds, problems } = ownKindsOf({ 'rules/own.ts': text }, seen.watch);
  const kind = kinds.derived.get('own');
  if (kind === undefined) throw new Error(JSON.stringify(problems));
  return { seen, kind };
}
