/** One rule, from its template or from the site's own words, to what a plan and a card need. */
import type { RuleKind } from '../kinds/kind.ts';
import type { SettingsProblem } from '../kinds/settings.ts';
import { settingsReader } from '../kinds/settings-reader.ts';
import { parseQuantity, withoutDust } from '../quantity/quantity.ts';
import { toCanonical } from '../quantity/unit.ts';
import type { RuleWritten } from '../site/rule-schema.ts';
import type { Bilingual, Given, TemplateNumber } from '../stations/station.ts';
import type { CardLabel } from './card.ts';
import { compileSuppression } from './compile-suppression.ts';
import type { MarkDraft, Path, Report, RuleDraft, SignalDraft, StationDraft } from './draft.ts';
import { commonInstances } from './draft-derived.ts';
import { compileFacts, compileLabel } from './rule-label.ts';
import {
  checkSettings,
  draftSettings,
  ownSettings,
  type PathOf,
  type SettingsDraft,
} from './rule-settings.ts';
import { compileTerms, type TermDefaults } from './rule-terms.ts';
import { sentence } from './sentence.ts';
import { changesOf, reportWeaker } from './weaker.ts';

/** What a rule is before the site has spoken. */
export interface RuleSource extends TermDefaults {
  readonly name: string;
  readonly kind: RuleKind;
  /** All it judges, the one it is about first. */
  readonly signals: readonly SignalDraft[];
  /** And the marks, in the order of their roles. */
  readonly judgedMarks?: readonly MarkDraft[];
  readonly numbers: readonly TemplateNumber[];
  readonly fixed: Readonly<Record<string, boolean>>;
  readonly hazard: string | null;
  readonly people: boolean;
  readonly label: CardLabel;
  readonly facts: Readonly<Record<string, string | Bilingual>>;
  readonly given: Given;
  /** What coverage asks for although the rule is armed. */
  readonly wants: readonly string[];
  /** What its kind takes where nothing is written, where that is not the same everywhere. */
  readonly usual?: Readonly<Record<string, string>>;
  /** The site wrote it whole: it brings nothing that could be made weaker. */
  readonly ofSite?: true;
}

/** What the site wrote for it, and for the rule it is like. */
export interface RuleWords {
  readonly own: RuleWritten | undefined;
  readonly alike: { readonly written: Partial<RuleWritten>; readonly path: Path } | null;
}

export function compileRule(
  station: StationDraft,
  signals: ReadonlyMap<string, SignalDraft>,
  source: RuleSource,
  words: RuleWords,
  report: Report,
): RuleDraft {
  const rulePath = [...station.path, 'rules', source.name];
  const own: Partial<RuleWritten> = words.own ?? {};
  const alike: Partial<RuleWritten> = words.alike?.written ?? {};
  const written: Partial<RuleWritten> = { ...alike, ...own };
  const pathOf = (key: string): Path =>
    !Object.hasOwn(own, key) && Object.hasOwn(alike, key) && words.alike !== null
      ? words.alike.path
      : rulePath;
  const drafted = draftSettings(source.numbers, source.fixed, ownSettings(written), source.given);
  reportRaised(station, source, written, pathOf, report);
  const guards = source.people || source.class.highlyManaged;
  if (guards) reportWeaker(source, written, pathOf, report);
  const { kind, judgedMarks: marks = [] } = source;
  const instances = instancesOf(source.signals, rulePath, report);
  const compiled = compiledSettings(source, drafted, pathOf, report);
  const facts = compileFacts(source.facts);
  const judged = source.signals[0]?.names ?? [];
  const terms = compileTerms(
    station,
    signals,
    { judged, marks: marks.length > 0 },
    written,
    source,
    pathOf,
    report,
  );
  const labelled = { ...source, facts, guards: guards || terms.class.highlyManaged };
  return {
    station,
    name: source.name,
    path: rulePath,
    kind,
    signals: source.signals,
    marks,
    instances,
    ...drafted,
    unconfirmed: [...new Set([...drafted.unconfirmed, ...source.signals.flatMap(restsOn)])],
    wants: [...source.wants, ...drafted.wanted],
    compiled,
    ...terms,
    suppress: compileSuppression(
      station,
      signals,
      { people: source.people, hazard: source.hazard, class: terms.class, judged },
      written,
      pathOf,
      report,
    ),
    changes: changesOf(source, written),
    hazard: source.hazard,
    people: source.people,
    label: compileLabel(written, labelled, rulePath, report),
    facts,
  };
}

function instancesOf(
  signals: readonly SignalDraft[],
  path: Path,
  report: Report,
): readonly string[] {
  const shape = commonInstances(signals);
  if (shape === null)
    report({
      path,
      problem: 'its signals have wildcards of different names',
      fix: 'Give their topics the same names, or judge signals of one place only.',
      atKey: true,
    });
  return shape?.instances ?? [];
}

/** Unconfirmed numbers behind a signal that is worked out. */
const restsOn = ({ derived }: SignalDraft): readonly string[] => derived?.unconfirmed ?? [];

/** What the kind makes of its settings; null where they are not whole. */
function compiledSettings(
  { kind, signals, judgedMarks = [] }: RuleSource,
  drafted: SettingsDraft,
  pathOf: PathOf,
  report: Report,
): unknown {
  const sound = checkSettings(kind, drafted, pathOf, report);
  if (!sound || drafted.missing.length > 0) return null;
  const problems: SettingsProblem[] = [];
  const whats = judgedMarks.map(({ what }) => what);
  const compiled = kind.compile(settingsReader(drafted.settings, signals, problems, whats));
  // What is said of the rule as a whole may only follow from a setting that could not be read.
  const unreadable = problems.filter((problem) => problem.path.length > 0);
  for (const problem of unreadable.length > 0 ? unreadable : problems)
    report({
      path: [...pathOf(String(problem.path[0] ?? '')), ...problem.path],
      problem: problem.problem,
      fix: sentence(problem.fix),
    });
  return problems.length > 0 ? null : compiled;
}

/** An ignition limit goes down by itself, and up only on a test of this residue. */
function reportRaised(
  station: StationDraft,
  { numbers, given }: Pick<RuleSource, 'numbers' | 'given'>,
  written: Partial<RuleWritten>,
  pathOf: PathOf,
  report: Report,
): void {
  for (const { setting, value, raisedBy, ceiling, proven } of numbers) {
    const own = written[setting];
    const most = ceiling?.(given) ?? value;
    if (raisedBy === undefined || most === null || typeof own !== 'string') continue;
    const [limit, wanted] = [canonicalOf(most), canonicalOf(own)];
    if (limit === null || wanted === null || wanted <= limit) continue;
    const path = [...pathOf(setting), setting];
    const problem = `${own} lies above ${most}`;
    const test = station.written.basket_test === undefined ? undefined : proven?.(given);
    if (test === undefined)
      report({
        path,
        problem: `${problem}, and no basket test of this residue says that it may`,
        fix: 'Write it lower; or give the station basket_test with report, signed_by and baskets (EN 15188, three sizes or more, signed by EHS).',
      });
    else if ('never' in test)
      report({ path, problem: `${problem}, ${test.never}`, fix: 'Write it lower.' });
    else if (wanted > (canonicalOf(test.upTo) ?? Number.NEGATIVE_INFINITY))
      report({
        path,
        problem: `${problem}, and above the ${test.upTo} that the basket test of this residue proves for its thickness`,
        fix: `Write at most ${test.upTo}.`,
      });
  }
}

function canonicalOf(text: string): number | null {
  const read = parseQuantity(text);
  return read.ok ? withoutDust(toCanonical(read.value.value, read.value.unit)) : null;
}
