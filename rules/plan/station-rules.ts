/** All rules of a station, and what became of each template: judged, switched off, or unbound. */
import { ruleKinds } from '../kinds/all.ts';
import type { RuleKind } from '../kinds/kind.ts';
import { didYouMean, nearest } from '../site/nearest.ts';
import type { RuleWritten } from '../site/rule-schema.ts';
import { type Given, plainClass, type RuleTemplate } from '../stations/station.ts';
import { compileRule, type RuleWords } from './compile-rule.ts';
import type { Path, Report, RuleDraft, SignalDraft, StationDraft } from './draft.ts';
import { givenBy } from './given.ts';
import { healthRuleNames, healthRules } from './health-rules.ts';
import { judgedMarks } from './judged-marks.ts';
import { judgedSignals } from './judged-signals.ts';
import { type OwnKinds, ruleKindNames, ruleKindOf } from './own-kinds.ts';
import { guards, type OffRule, switchedOff, writtenFor } from './switched-off.ts';

export interface StationRules {
  readonly rules: readonly RuleDraft[];
  readonly off: readonly OffRule[];
  /** Templates that would mean nothing here, and why. */
  readonly moot: readonly { readonly template: RuleTemplate; readonly why: string }[];
  /** Templates without a signal to judge. */
  readonly unbound: readonly RuleTemplate[];
}

export function stationRules(
  station: StationDraft,
  signals: ReadonlyMap<string, SignalDraft>,
  report: Report,
): StationRules {
  const written = station.written.rules ?? {};
  const rules: RuleDraft[] = [];
  const off: OffRule[] = [];
  const unbound: RuleTemplate[] = [];
  const moot: { template: RuleTemplate; why: string }[] = [];
  const templates = station.kind.rules;
  const isOff = (name: string, people: boolean): boolean => {
    const found = switchedOff(station, name, people, report);
    if (found !== null) off.push(found);
    return found !== null;
  };
  for (const template of templates) {
    if (isOff(template.name, guards(station, template))) continue;
    const why = template.moot?.(givenBy(station)) ?? null;
    if (why !== null) {
      moot.push({ template, why });
      continue;
    }
    const rule = fromTemplate(station, signals, template, written, report);
    if (rule === null) unbound.push(template);
    else rules.push(rule);
  }
  const health = healthRuleNames(station, signals);
  const known = [...templates.map((template) => template.name), ...health];
  for (const [name, words] of Object.entries(written)) {
    if (
      known.includes(name) ||
      isOff(name, bareRule(words).people || words.highly_managed === true)
    )
      continue;
    const rule = ownRule(station, signals, name, words, known, report);
    if (rule !== null) rules.push(rule);
  }
  rules.push(...healthRules(station, signals, rules, isOff, report));
  return { rules, off, moot, unbound };
}

/** null where nothing it could judge is bound. */
function fromTemplate(
  station: StationDraft,
  signals: ReadonlyMap<string, SignalDraft>,
  template: RuleTemplate,
  written: Readonly<Record<string, RuleWritten>>,
  report: Report,
): RuleDraft | null {
  const kind = ruleKinds.get(template.kind);
  if (kind === undefined) throw new RangeError(`no rule kind "${template.kind}"`);
  const own = writtenFor(written, template.name);
  const path = [...station.path, 'rules', template.name];
  if (own?.kind !== undefined && own.kind !== template.kind)
    report({
      path: [...path, 'kind'],
      problem: `${template.name} is a rule of this station, of the kind ${template.kind}`,
      fix: 'Take kind out, or give the rule another name to make it your own.',
    });
  const candidates = template.signals.map((name) =>
    signals.has(name) ? name : (template.instead?.[name] ?? name),
  );
  const judged = judgedSignals(station, signals, kind, candidates, own, path, report);
  if (judged === null) {
    const readable = (name: string): boolean => signals.has(name) || station.broken.has(name);
    const serves =
      template.signals.some((name) => station.broken.has(name)) ||
      station.kind.rules.some(
        (other) => other.alike?.rule === template.name && other.signals.some(readable),
      );
    if (own !== undefined && own.signal === undefined && own.signals === undefined && !serves)
      report({
        path,
        problem: `${template.name} judges ${template.signals.join(kind.takes === undefined ? ' or ' : ' and ')}, which this station does not have`,
        fix: `Bind ${template.signals[0]} under signals, or take the rule out.`,
        atKey: true,
      });
    return null;
  }
  const marks = judgedMarks(station, kind, template.marks ?? [], own, path, report);
  if (marks === null) return null;
  const given = givenBy(station);
  return compileRule(
    station,
    signals,
    {
      ...template,
      kind,
      signals: judged,
      judgedMarks: marks,
      fixed: template.fixed ?? {},
      people: station.kind.hazards.some((h) => h.id === template.hazard && h.people),
      facts: template.facts?.(given) ?? {},
      given,
      wants: template.firePlan === true ? firePlanWants(given) : [],
    },
    { own, alike: alikeWords(station, template, written) },
    report,
  );
}

function alikeWords(
  station: StationDraft,
  template: RuleTemplate,
  written: Readonly<Record<string, RuleWritten>>,
): RuleWords['alike'] {
  const alike = template.alike;
  const words = alike === undefined ? undefined : writtenFor(written, alike.rule);
  if (alike === undefined || words === undefined) return null;
  const {
    off: _off,
    reason: _reason,
    signed_by: _signedBy,
    signal: _signal,
    signals: _signals,
    kind: _kind,
    ...rest
  } = words;
  const shared = Object.fromEntries(
    Object.entries(rest).filter(([key]) => alike.only === undefined || alike.only.includes(key)),
  );
  return { written: shared, path: [...station.path, 'rules', alike.rule] };
}

/** A rule the site wrote; null where it lacks what it needs. */
function ownRule(
  station: StationDraft,
  signals: ReadonlyMap<string, SignalDraft>,
  name: string,
  words: RuleWritten,
  known: readonly string[],
  report: Report,
): RuleDraft | null {
  const path = [...station.path, 'rules', name];
  const meant = words.kind === undefined ? nearest(name, known) : null;
  if (meant !== null) {
    report({
      path,
      problem: `"${name}" is no rule of ${station.kind.name}`,
      fix: `Did you mean "${meant}"? A rule of your own needs a kind.`,
      atKey: true,
    });
    return null;
  }
  const kind = ownKind(station.own, words.kind, name, path, report);
  for (const [key, what] of requiredOfOwn)
    if (
      words[key] === undefined &&
      !(key === 'signal' && (words.signals ?? words.marks ?? kind?.marks))
    )
      report({
        path: [...path, key],
        problem: `the rule "${name}" has no ${key}`,
        fix: what,
      });
  // A kind that nobody knows is taken for one of one signal, so that the rest is checked too.
  const taken = kind ?? {
    name: words.kind ?? name,
    ...(words.signals === undefined ? {} : several),
  };
  const judged = judgedSignals(station, signals, taken, [], words, path, report);
  const marks = kind === null ? null : judgedMarks(station, kind, [], words, path, report);
  if (kind === null || judged === null || marks === null) return null;
  const own = { name, kind, signals: judged, judgedMarks: marks, given: givenBy(station) };
  return compileRule(
    station,
    signals,
    { ...bareRule(words), ...own, hazard: name },
    { own: words, alike: null },
    report,
  );
}

/** What a rule of the site's own brings before the site's words: nothing that could surprise. */
const bareRule = (words: RuleWritten) =>
  ({
    numbers: [],
    fixed: {},
    gate: null,
    hold: null,
    priority: ['medium', 'medium'],
    class: plainClass,
    respond: null,
    people: words.signal_word !== undefined && words.signal_word !== 'NOTICE',
    label: {
      word: words.signal_word ?? 'NOTICE',
      sentence: null,
      consequence: '',
      steps: [],
      doNot: [],
      caution: '',
    },
    facts: {},
    wants: [],
    ofSite: true,
  }) as const;

function firePlanWants({ firePlan }: Given): string[] {
  if (firePlan === null) return ['the site’s fire plan: telephone and muster point (fire_plan)'];
  return firePlan.lone_worker === undefined
    ? ['what holds at this site for whoever works alone (fire_plan)']
    : [];
}
const several = { takes: { least: 2, most: 8, units: 'same' } } as const;

const requiredOfOwn = [
  ['signal', 'Name the signal of this station it judges.'],
  ['priority', 'Say how soon somebody must act: high, medium or low.'],
  ['consequence', 'Say what happens if nobody acts.'],
  ['actions', 'List the first things to do, in order.'],
] as const;

function ownKind(
  own: OwnKinds,
  name: string | undefined,
  rule: string,
  path: Path,
  report: Report,
): RuleKind | null {
  const kinds = ruleKindNames(own);
  const kind = name === undefined ? undefined : ruleKindOf(own, name);
  if (kind !== undefined) return kind;
  report(
    name === undefined
      ? {
          path: [...path, 'kind'],
          problem: `the rule "${rule}" has no kind, and is none this station knows`,
          fix: `Give it a kind: ${kinds.join(', ')}.`,
        }
      : {
          path: [...path, 'kind'],
          problem: `there is no rule kind "${name}"`,
          fix: didYouMean(name, kinds),
        },
  );
  return null;
}
