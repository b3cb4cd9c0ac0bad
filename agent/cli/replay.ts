/**
 * `forebond replay --site FILE --from CSV-or-DATA-DIR`: the alarms that the rules give over
 * recorded data, as a table or one JSON object a line; then samples, span and seconds.
 */
import { setPriority } from 'node:os';
import { type Command, InvalidArgumentError } from 'commander';
import type { Effect } from '#rules/input.ts';
import type { RuleCard } from '#rules/plan/card.ts';
import type { CompiledSite } from '#rules/plan/compile.ts';
import { counted } from '#rules/quantity/counted.ts';
import type { EpochMs } from '#rules/signal/sample.ts';
import type { ReplayEnd } from '../replay/replay.ts';
import type { SiteSource } from '../site/revision.ts';
import { type ReplayJob, replayJob } from '../wiring/replay-job.ts';
import { badRowLines } from './bad-rows.ts';
import { printComparison } from './compare.ts';
import type { CliParts } from './parts.ts';
import { timeArgument } from './time-argument.ts';

interface ReplayFlags {
  readonly site: string;
  readonly from: string;
  readonly since?: EpochMs;
  readonly until?: EpochMs;
  readonly timezone?: string;
  readonly badRows?: number;
  readonly compare?: string;
  readonly json?: boolean;
}

function fromArgument(text: string): string {
  if (text.trim() === '') throw new InvalidArgumentError('name a CSV file or a data folder.');
  return text;
}

type Transition = Extract<Effect, { kind: 'transition' }>;

export function replayCommand(program: Command, parts: CliParts): void {
  program
    .command('replay')
    .description('the same rules over recorded data: which alarms, and when')
    .requiredOption('--site <file>', 'site file')
    .requiredOption(
      '--from <csv-or-data-dir>',
      'recorded data: a CSV file or a data folder',
      fromArgument,
    )
    .option('--since <time>', 'from this time on (RFC 3339)', timeArgument)
    .option('--until <time>', 'before this time (RFC 3339)', timeArgument)
    .option('--timezone <zone>', 'IANA zone of local times in a CSV file')
    .option('--bad-rows <n>', 'how many bad rows a CSV file may have', countArgument)
    .option('--compare <other-site-file>', 'what another site file would change: its alarms beside')
    .option('--json', 'print one JSON object a line')
    .action(async (flags: ReplayFlags) => {
      const source = await parts.siteOrExit(flags.site);
      if (source === null) return;
      // A running agent on this machine comes first.
      setPriority(10);
      const began = performance.now();
      const job = jobOf(source, flags);
      if (flags.compare !== undefined) {
        const other = await parts.siteOrExit(flags.compare);
        if (other === null) return;
        // Like for like: a site against another, not a history of sites against one.
        const now = { ...job, wholly: true };
        await printComparison(
          [now, { ...now, source: other, site: flags.compare }],
          flags.json === true,
          parts,
        );
        return;
      }
      const printer = new Printer(parts.print, flags.json === true);
      const end = await replayJob(job, {
        begin: (compiled) => printer.cards(compiled),
        emit: (effect) => printer.effect(effect),
        damage: (damage) => printer.damage(damage),
        complain: parts.complain,
      });
      printer.end(end, (performance.now() - began) / 1_000);
    });
}

const jobOf = (source: SiteSource, flags: ReplayFlags): ReplayJob => ({
  source,
  site: flags.site,
  from: flags.from,
  ...(flags.since === undefined ? {} : { sinceMs: flags.since }),
  ...(flags.until === undefined ? {} : { untilMs: flags.until }),
  ...(flags.timezone === undefined ? {} : { timezone: flags.timezone }),
  ...(flags.badRows === undefined ? {} : { badRowsMax: flags.badRows }),
});

function countArgument(text: string): number {
  if (!/^\d{1,9}$/.test(text)) throw new InvalidArgumentError('write a whole number of rows.');
  return Number(text);
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
      const { samples, late, badRows } = end;
      this.print(
        JSON.stringify({ samples, span_ms: spanMs, seconds: taken, late, bad_rows: badRows }),
      );
      return;
    }
    if (this.count === 0) this.print('no alarms');
    const hours = (spanMs / 3_600_000).toFixed(1);
    this.print(`${counted(end.samples, 'sample')}, ${hours} h of data, ${taken} s`);
    if (end.late > 0)
      this.print(
        `${counted(end.late, 'row')} stood later in the file than the hold of the signal allows; live, that might have been judged otherwise`,
      );
    for (const line of badRowLines(end.badRows)) this.print(line);
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
