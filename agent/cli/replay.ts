/**
 * `forebond replay --site FILE --from CSV-or-DATA-DIR`: the alarms that the rules give over
 * recorded data, as a table or one JSON object a line; then samples, span and seconds.
 */
import { createReadStream, statSync } from 'node:fs';
import { setPriority } from 'node:os';
import { type Command, InvalidArgumentError } from 'commander';
import type { Effect } from '#rules/input.ts';
import { isInstance } from '#rules/plan/binding.ts';
import type { RuleCard } from '#rules/plan/card.ts';
import type { CompiledSite, Instances } from '#rules/plan/compile.ts';
import type { EpochMs } from '#rules/signal/sample.ts';
import { AgentError } from '../errors.ts';
import { createIntake } from '../intake/intake.ts';
import { limits } from '../limits.ts';
import { readRecorded } from '../replay/csv.ts';
import { type RecordedValue, type ReplayEnd, replayValues } from '../replay/replay.ts';
import { compileSource, type SiteSource } from '../site/revision.ts';
import { replayFolder } from '../wiring/replay-folder.ts';
import type { CliParts } from './parts.ts';
import { timeArgument } from './time-argument.ts';

interface ReplayFlags {
  readonly site: string;
  readonly from: string;
  readonly since?: EpochMs;
  readonly until?: EpochMs;
  readonly timezone?: string;
  readonly badRows?: number;
  readonly json?: boolean;
}

type Transition = Extract<Effect, { kind: 'transition' }>;

export function replayCommand(program: Command, parts: CliParts): void {
  program
    .command('replay')
    .description('the same rules over recorded data: which alarms, and when')
    .requiredOption('--site <file>', 'site file')
    .requiredOption('--from <csv-or-data-dir>', 'recorded data: a CSV file or a data folder')
    .option('--since <time>', 'from this time on (RFC 3339)', timeArgument)
    .option('--until <time>', 'before this time (RFC 3339)', timeArgument)
    .option('--timezone <zone>', 'IANA zone of local times in a CSV file')
    .option('--bad-rows <n>', 'how many bad rows a CSV file may have', countArgument)
    .option('--json', 'print one JSON object a line')
    .action(async (flags: ReplayFlags) => {
      const source = await parts.siteOrExit(flags.site);
      if (source === null) return;
      // A running agent on this machine comes first.
      setPriority(10);
      const began = performance.now();
      const printer = new Printer(parts.print, flags.json === true);
      const end = statSync(flags.from, { throwIfNoEntry: false })?.isDirectory()
        ? replayData(source, flags, printer)
        : await replayCsv(source, flags, printer, parts.complain);
      printer.end(end, (performance.now() - began) / 1_000);
    });
}

function countArgument(text: string): number {
  if (!/^\d{1,9}$/.test(text)) throw new InvalidArgumentError('write a whole number of rows.');
  return Number(text);
}

function replayData(source: SiteSource, flags: ReplayFlags, printer: Printer): ReplayEnd {
  const span = {
    ...(flags.since === undefined ? {} : { sinceMs: flags.since }),
    ...(flags.until === undefined ? {} : { untilMs: flags.until }),
  };
  return replayFolder(source, flags.from, span, {
    begin: (compiled) => printer.cards(compiled),
    emit: (effect) => printer.effect(effect),
    damage: (damage) => printer.damage(damage),
  });
}

async function replayCsv(
  source: SiteSource,
  flags: ReplayFlags,
  printer: Printer,
  complain: (line: string) => void,
): Promise<ReplayEnd> {
  if (statSync(flags.from, { throwIfNoEntry: false }) === undefined)
    throw new AgentError('REPLAY_NOTHING_THERE', { path: flags.from });
  const rows: { name: string; value: Omit<RecordedValue, 'signal'> }[] = [];
  const blocks = readRecorded(createReadStream(flags.from), {
    path: flags.from,
    ...(flags.timezone === undefined ? {} : { timezone: flags.timezone }),
    ...(flags.badRows === undefined ? {} : { badRowsMax: flags.badRows }),
    onBadRow: ({ line, problem }) => complain(`${flags.from}:${line} ${problem}; skipped`),
  });
  for await (const block of blocks)
    for (const { signal, line: _, ...value } of block) {
      if (flags.since !== undefined && value.timeMs < flags.since) continue;
      if (flags.until !== undefined && value.timeMs >= flags.until) continue;
      rows.push({ name: signal, value });
    }
  const compiled = compileSource(source, instancesIn(source, new Set(rows.map((r) => r.name))));
  const index = new Map(compiled.plan.signals.map(({ id }, i) => [id, i]));
  const fed = new Set(compiled.bindings.flatMap((b) => [b.id, ...instanceIds(b)]));
  const unknown = new Set<string>();
  const values: RecordedValue[] = [];
  for (const { name, value } of rows) {
    const signal = index.get(name);
    if (signal === undefined || !fed.has(name)) unknown.add(name);
    else values.push({ ...value, signal });
  }
  for (const name of unknown)
    complain(`${flags.from}: ${name} is no measured signal of ${flags.site}; skipped`);
  if (values.length === 0)
    throw new AgentError('REPLAY_NOTHING_KNOWN', { path: flags.from, site: flags.site });
  printer.cards(compiled);
  const intake = createIntake({
    bindings: compiled.bindings,
    discover: () => null,
    limits,
    clock: 'samples',
  });
  return replayValues(values, intake, {
    plan: compiled.plan,
    planOf: () => compiled.plan,
    emit: (effect) => printer.effect(effect),
  });
}

const instanceIds = (binding: CompiledSite['bindings'][number]): string[] =>
  [...binding.instances.keys()].map((instance) => `${binding.id}-${instance}`);

/** The wildcard values that the names in a file imply. */
function instancesIn(source: SiteSource, names: ReadonlySet<string>): Instances {
  const { bindings } = compileSource(source, {});
  const found: Record<string, string[]> = {};
  for (const { id, signal, levels } of bindings) {
    if (signal !== null) continue;
    found[id] = [...names]
      .filter((name) => name.startsWith(`${id}-`))
      .map((name) => name.slice(id.length + 1))
      .filter((instance) => isInstance(instance, levels.length))
      .slice(0, limits.wildcardInstancesMax);
  }
  return found;
}

/** Prints transitions as they come. */
class Printer {
  private readonly print: (line: string) => void;
  private readonly json: boolean;
  private byRule = new Map<string, RuleCard>();
  private units = new Map<string, string>();
  private count = 0;

  constructor(print: (line: string) => void, json: boolean) {
    this.print = print;
    this.json = json;
  }

  cards(compiled: CompiledSite): void {
    this.byRule = new Map(compiled.rules.map((card) => [card.id, card]));
    this.units = new Map(compiled.plan.signals.map(({ id, unit }) => [id, unit]));
  }

  effect(effect: Effect): void {
    if (effect.kind !== 'transition') return;
    this.count += 1;
    const { evidence } = effect;
    const unit = this.units.get(effect.signal) ?? null;
    if (this.json) {
      this.print(JSON.stringify(transitionLine(effect, this.byRule.get(effect.rule), unit)));
      return;
    }
    if (this.count === 1) this.print(tableRow('time', 'transition', 'rule', 'value', 'limit'));
    this.print(
      tableRow(
        new Date(effect.judged).toISOString(),
        effect.transition,
        effect.rule,
        quantity(evidence.value, unit),
        quantity(evidence.limit, unit),
      ),
    );
  }

  damage(damage: { signal: string | null; fromMs: EpochMs; toMs: EpochMs; reason: string }): void {
    const { signal, fromMs, toMs, reason } = damage;
    const facts = { damage: reason, signal, from: fromMs, to: toMs };
    const span = `${new Date(fromMs).toISOString()} to ${new Date(toMs).toISOString()}`;
    this.print(
      this.json
        ? JSON.stringify(facts)
        : `damaged: ${signal ?? 'some signals'}, ${span}: ${reason}`,
    );
  }

  end(end: ReplayEnd, seconds: number): void {
    const spanMs = end.fromMs === null || end.toMs === null ? 0 : end.toMs - end.fromMs;
    const taken = Number(seconds.toFixed(3));
    if (this.json) {
      const { samples, late } = end;
      this.print(JSON.stringify({ samples, span_ms: spanMs, seconds: taken, late }));
      return;
    }
    if (this.count === 0) this.print('no alarms');
    const hours = (spanMs / 3_600_000).toFixed(1);
    this.print(`${end.samples} samples, ${hours} h of data, ${taken} s`);
    if (end.late > 0)
      this.print(
        `${end.late} rows stood later in the file than their signal's hold allows; live, they might have been judged otherwise`,
      );
  }
}

/** One transition, as `--json` prints it. */
export function transitionLine(
  effect: Omit<Transition, 'kind'>,
  card: RuleCard | undefined,
  unit: string | null,
): object {
  const { at, judged, occurrence, rule, signal, transition, to, severity, priority } = effect;
  return {
    at,
    occurrence,
    rule,
    signal,
    transition,
    value: effect.evidence.value ?? null,
    limit: effect.evidence.limit ?? null,
    unit,
    priority,
    safety_label: card?.label.word ?? null,
    judged,
    state: to,
    severity,
  };
}

const quantity = (value: number | undefined, unit: string | null): string =>
  value === undefined ? '' : `${Number(value.toPrecision(6))} ${unit ?? ''}`;

const tableRow = (
  time: string,
  transition: string,
  rule: string,
  value: string,
  limit: string,
): string =>
  `${time.padEnd(25)}${transition.padEnd(14)}${rule.padEnd(44)} ${value.padEnd(14)}${limit}`.trimEnd();
