/**
 * What a site file changes of a rule that comes with the station, and whether that makes it weaker.
 * Where people can be hurt it may only be made stricter; an ignition limit has its own way up
 * (a signed basket test, compile-rule.ts).
 */
import { priorities } from '../alarm/priority.ts';
import { parseDuration } from '../quantity/duration.ts';
import { parseQuantity, withoutDust } from '../quantity/quantity.ts';
import { toCanonical } from '../quantity/unit.ts';
import type { RuleWritten } from '../site/rule-schema.ts';
import type { RuleSource } from './compile-rule.ts';
import type { Report } from './draft.ts';
import { draftSettings, ownSettings, type PathOf } from './rule-settings.ts';
import { stricterWays, type Way } from './stricter-ways.ts';

/** A default that the site file replaces, both as they are written. */
export interface RuleChange {
  /** Setting or term, as in the site file. */
  readonly what: string;
  readonly usual: string;
  readonly written: string;
}

const termsOf = ({ priority, class: of, respond, hold, gate }: RuleSource) => ({
  priority: priority[0] === priority[1] ? priority[0] : priority.join(', '),
  respond,
  latching: of.latching,
  self_acknowledging: of.selfAcknowledging,
  highly_managed: of.highlyManaged,
  hold: hold ?? 'none',
  gate: gate === null ? 'none' : 'of the station',
  suppress_while: 'none',
});
const textKeys = ['sentence', 'consequence', 'actions', 'do_not', 'caution'] as const;

const words = (value: unknown): string =>
  typeof value === 'object' && value !== null
    ? Array.isArray(value) && value.every((each) => typeof each === 'string')
      ? value.join(', ')
      : 'of the site'
    : String(value);

/** In the order of the site file; empty for a rule of the site's own. */
export function changesOf(source: RuleSource, written: Partial<RuleWritten>): RuleChange[] {
  if (source.ofSite === true) return [];
  const usual: Readonly<Record<string, unknown>> = { ...usualSettings(source), ...termsOf(source) };
  const own = { ...ownSettings(written) };
  return Object.entries(written).flatMap(([what, value]): RuleChange[] => {
    if (textKeys.some((key) => key === what))
      return textChange(what, textOf(source, written, value));
    if (!Object.hasOwn(own, what) && !Object.hasOwn(usual, what)) return [];
    const was = usual[what] ?? stricterWays[source.kind.name]?.[what]?.usual ?? 'none';
    return words(was) === words(value) ? [] : [{ what, usual: words(was), written: words(value) }];
  });
}

const textChange = (what: string, own: string | null): RuleChange[] =>
  own === null ? [] : [{ what, usual: 'of the station', written: own }];

/** Where people can be hurt the site's own text stands behind the label's: it is said word for word. */
function textOf(source: RuleSource, written: Partial<RuleWritten>, value: unknown): string | null {
  if (!source.people && !source.class.highlyManaged && written.highly_managed !== true)
    return 'of the site';
  const own = [value].flat().map(String).join(' ');
  return own === '' ? null : `of the station, and behind it: ${own}`;
}

/** What holds where the site says nothing. */
const usualSettings = (source: RuleSource): Readonly<Record<string, unknown>> => ({
  ...source.usual,
  ...draftSettings(source.numbers, source.fixed, {}, source.given).settings,
});

export function reportWeaker(
  source: RuleSource,
  written: Partial<RuleWritten>,
  pathOf: PathOf,
  report: Report,
): void {
  if (source.ofSite === true) return;
  const usual = usualSettings(source);
  const limitMs = msOf(written.limit ?? usual.limit);
  for (const [setting, value] of Object.entries(ownSettings(written))) {
    // Its own way up, with its own words.
    if (source.numbers.some((each) => each.setting === setting && each.raisedBy !== undefined))
      continue;
    const way = stricterWays[source.kind.name]?.[setting];
    const { weakest } = source.numbers.find((each) => each.setting === setting) ?? {};
    const was = weakest ?? usual[setting] ?? way?.usual;
    const how = way === undefined || was === undefined ? null : weaker(way, was, value, limitMs);
    if (how === null) continue;
    const problem = `${String(value)} is ${how} than the ${String(was)} ${weakest === undefined ? 'this rule comes with' : 'it may be at the most'}, and people can be hurt by what it watches`;
    const fix = `Write ${String(was)} or what is stricter, or take ${setting} out.`;
    report({ path: [...pathOf(setting), setting], problem, fix });
  }
  reportTerms(source, written, pathOf, report);
}

function reportTerms(
  { class: of, priority, respond, hold }: RuleSource,
  written: Partial<RuleWritten>,
  pathOf: PathOf,
  report: Report,
): void {
  const no = (key: keyof RuleWritten & string, problem: string, fix = `Take ${key} out.`): void =>
    report({
      path: [...pathOf(key), key],
      problem: `${problem}, and people can be hurt by what it watches`,
      fix,
    });
  if (of.latching && written.latching === false)
    no('latching', 'this alarm stays until it is reset');
  if (of.highlyManaged && written.highly_managed === false)
    no('highly_managed', 'this alarm is highly managed');
  if (!of.selfAcknowledging && written.self_acknowledging === true)
    no('self_acknowledging', 'this alarm waits for an answer');
  if (written.gate !== undefined && written.gate !== 'none')
    no('gate', 'with a gate of the site it would be judged only now and then');
  if (hold !== null && written.hold === 'none') no('hold', `what it finds is held (${hold})`);
  const wanted = [written.priority ?? []].flat();
  const low = wanted.find((each, i) => rank(each) > rank(priority[wanted.length === 1 ? 0 : i]!));
  if (low !== undefined)
    no('priority', `${low} is less than the ${priority[0]} it comes with`, `Write ${priority[0]}.`);
  const [usualMs, ownMs] = [msOf(respond), msOf(written.respond)];
  if (usualMs !== null && ownMs !== null && ownMs > usualMs)
    no(
      'respond',
      `${written.respond} is longer than the ${respond} there is to act`,
      `Write ${respond} or less.`,
    );
}

const rank = (priority: (typeof priorities)[number]): number => priorities.indexOf(priority);

/** In what it is weaker; null where it is not, or nobody can tell. */
function weaker(way: Way, was: unknown, now: unknown, limitMs: number | null): string | null {
  if (way.stricter === 'free') return null;
  if (way.stricter === 'true') return was === true && now === false ? 'weaker' : null;
  const times = [timeOf(was, limitMs), timeOf(now, limitMs)] as const;
  const timed = times[0] !== null && times[1] !== null;
  const [usual, own] = timed ? times : [amountOf(was), amountOf(now)];
  if (usual === null || own === null || own === usual) return null;
  if (own > usual === (way.stricter === 'more')) return null;
  if (timed) return own > usual ? 'longer' : 'shorter';
  return own > usual ? 'more' : 'less';
}

/** A duration, or a share of the limit; ms. */
function timeOf(value: unknown, limitMs: number | null): number | null {
  const share = /^([\d.]+) %$/.exec(String(value));
  if (share !== null && limitMs !== null) return (Number(share[1]) / 100) * limitMs;
  return msOf(value);
}

function msOf(value: unknown): number | null {
  const read = typeof value === 'string' ? parseDuration(value) : null;
  return read?.ok === true ? read.value : null;
}

/** In the canonical unit; nothing is nothing in any. */
function amountOf(value: unknown): number | null {
  if (typeof value === 'number') return value;
  const read = typeof value === 'string' ? parseQuantity(value) : null;
  return read?.ok === true ? withoutDust(toCanonical(read.value.value, read.value.unit)) : null;
}
