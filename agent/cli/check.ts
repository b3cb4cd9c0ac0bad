/**
 * `forebond check FILE`: whether a site file is sound, and what it watches.
 *
 * Exit 0 with a short summary, or 1 with every problem as `FILE:LINE:COLUMN path: what is wrong. fix`.
 */
import type { Command } from 'commander';
import type { Coverage, RuleCard } from '#rules/plan/card.ts';
import type { SignalChange } from '#rules/plan/people-reach.ts';
import { counted } from '#rules/quantity/counted.ts';
import { type PlacedProblem, pathText } from '#rules/site/problem.ts';

/** What the command needs of the rest: reading a site file, and somewhere to write. */
export interface CheckParts {
  readonly readSite: (file: string) => Promise<CheckedSite>;
  /** One line, without its end. */
  readonly print: (line: string) => void;
  readonly setExitCode: (code: number) => void;
}

export type CheckedSite =
  | {
      readonly ok: true;
      readonly source: {
        readonly site: {
          readonly site: string;
          readonly extensions?: readonly string[] | undefined;
        };
      };
      readonly compiled: {
        readonly coverage: Coverage;
        readonly rules: readonly RuleCard[];
        readonly bindings: readonly { readonly id: string; readonly signal: number | null }[];
        readonly changedSignals: readonly SignalChange[];
        readonly changedWaiting: readonly Pick<RuleCard, 'id' | 'changes'>[];
      };
    }
  | { readonly ok: false; readonly problems: readonly PlacedProblem[]; readonly more: number };

export function checkCommand(program: Command, parts: CheckParts): void {
  program
    .command('check')
    .description('check a site file: every problem with its place and fix, or what it watches')
    .argument('<file>', 'site file (YAML)')
    .option('--json', 'print one JSON object')
    .action(async (file: string, options: { json?: boolean }) => {
      const checked = await parts.readSite(file);
      const lines = options.json === true ? [checkedJson(checked)] : checkedLines(checked);
      for (const line of lines) parts.print(line);
      parts.setExitCode(checked.ok ? 0 : 1);
    });
}

/** `FILE:LINE:COLUMN path: what is wrong. fix` */
export function problemLine(problem: PlacedProblem): string {
  const { file, line, column, path } = problem;
  const text = problem.problem.replace(/[.\s]+$/, '');
  return oneLine(`${file}:${line}:${column} ${pathText(path)}: ${text}. ${problem.fix}`);
}

/** Each problem of a file that cannot be taken, as one line. */
export function problemLines({ problems, more }: CheckedSite & { ok: false }): string[] {
  const lines = problems.map(problemLine);
  return more === 0 ? lines : [...lines, `and ${more} more`];
}

/** Text from a file cannot break the line or steer the terminal. */
const oneLine = (text: string): string =>
  text.replace(/\p{Cc}/gu, (character) => JSON.stringify(character).slice(1, -1));

function checkedJson(checked: CheckedSite): string {
  if (!checked.ok)
    return JSON.stringify({
      ok: false,
      problems: checked.problems.map(({ file, line, column, path, problem, fix }) => ({
        file,
        line,
        column,
        path: pathText(path),
        problem,
        fix,
      })),
      more: checked.more,
    });
  const { coverage, rules, bindings } = checked.compiled;
  return JSON.stringify({
    ok: true,
    site: checked.source.site.site,
    signals: bindings.map((binding) => binding.id),
    rules: rules.map(({ id, readiness, needs }) => ({ id, readiness, needs })),
    coverage,
  });
}

function checkedLines(checked: CheckedSite): readonly string[] {
  if (!checked.ok) return problemLines(checked);
  const { coverage, rules, bindings, changedSignals, changedWaiting } = checked.compiled;
  const armed = rules.filter((rule) => rule.readiness !== 'not-armed').length;
  const wild = bindings.filter((binding) => binding.signal === null).length;
  const lines = [
    `${checked.source.site.site}: ${counted(bindings.length, 'signal')}, ${counted(armed, 'rule')} armed`,
  ];
  if (wild > 0)
    lines.push(`  ${counted(wild, 'wildcard')} will add signals and rules as values come`);
  for (const file of checked.source.site.extensions ?? [])
    lines.push(`  own rules    ${file} runs with the agent’s rights; check it like a program`);
  for (const station of coverage.stations) {
    lines.push(
      `${station.station} (${station.kind}): ${counted(station.watched.length, 'hazard')} watched, ${station.unwatched.length} not watched`,
    );
    for (const hazard of station.unwatched)
      lines.push(`  not watched  ${hazard.words} ${hazard.why}`);
    for (const rule of station.notArmed)
      lines.push(`  not armed    ${rule.rule}: needs ${rule.needs.join('; ')}`);
    for (const { signal, needs } of station.notWorkedOut)
      lines.push(`  not derived  ${signal}: needs ${needs.join('; ')}`);
    lines.push(...station.unconfirmed.map(unconfirmedLine));
    for (const { rule, why } of station.moot) lines.push(`  not judged   ${rule}: ${why}`);
    lines.push(...rules.filter((rule) => rule.station === station.station).flatMap(asideLines));
    const ofStation = rules.filter((rule) => rule.station === station.station);
    lines.push(...station.off.map(offLine), ...ofStation.flatMap(changedLines));
    const isHere = ({ id }: { readonly id: string }): boolean =>
      id.startsWith(`${station.station}/`);
    lines.push(...changedWaiting.filter(isHere).flatMap(changedLines));
    const read = changedSignals.filter(({ signal }) => signal.startsWith(`${station.station}/`));
    lines.push(...read.flatMap(({ signal, ...of }) => changedLines({ id: signal, changes: [of] })));
    for (const signal of station.silenceUnnoticed)
      lines.push(`  silence      ${signal}: nobody would notice; give it expect_every`);
  }
  return lines.map(oneLine);
}

function offLine({ rule, reason, signedBy, people }: Coverage['stations'][number]['off'][number]) {
  const who = signedBy === null ? '' : ` (${signedBy} answers for it)`;
  return `  off          ${rule}: ${reason}${who}${people ? '; people can be hurt by what it would watch' : ''}`;
}

/** Each default that the site file replaces, of a rule or of how a signal is read. */
const changedLines = ({ id, changes }: Pick<RuleCard, 'id' | 'changes'>): string[] =>
  changes.map(({ what, usual, written }) => `  changed      ${id}: ${what} ${usual} → ${written}`);

/** While the plant is so, nobody is told of it: then its hazard counts as not watched. */
const asideLines = ({ id, suppress }: RuleCard): string[] =>
  suppress.map(
    ({ because }) => `  suppressed   ${id} while ${because}: its hazard is not watched then`,
  );

type Unconfirmed = Coverage['stations'][number]['unconfirmed'][number];

/** Numbers nobody has confirmed; or something else that it lacks, armed as it is. */
function unconfirmedLine({ rule, numbers, needs }: Unconfirmed): string {
  const doubtful = numbers.filter(({ written }) => written !== null);
  const enter = needs.join('; ');
  return doubtful.length === 0
    ? `  lacks        ${rule}: ${enter}`
    : `  unconfirmed  ${rule}: ${doubtful.map(numberWords).join(', ')}; to confirm, enter ${enter}`;
}

const markWords = {
  CP: 'common practice',
  PUB: 'published',
  DS: 'data sheet',
  SITE: 'site',
  EJ: 'engineering judgement',
} as const;

const numberWords = (number: Unconfirmed['numbers'][number]): string =>
  `${number.setting} ${String(number.written)} rests on ${markWords[number.basis.mark]} alone`;
