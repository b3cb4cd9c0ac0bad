/**
 * Scenarios of a station: what the plant does, minute by minute, and what people are told of it.
 *
 * Each station kind has a file in `scenarios/` whose stories raise every one of its rules and show it
 * clear, latch or hold. What is told is recorded beside it, to be read by a person.
 */
import { parse } from 'yaml';
import { subjectOf } from '#agent/wiring/views.ts';
import { sayAlarm } from '#rules/alarm/say.ts';
import type { HoldWhat } from '#rules/hold/hold.ts';
import type { Effect, MarkCommand } from '#rules/input.ts';
import { ruleKinds } from '#rules/kinds/all.ts';
import { readSheet } from '#rules/material/read-sheet.ts';
import type { SheetWritten } from '#rules/material/sheet.ts';
import type { RuleCard } from '#rules/plan/card.ts';
import { type CompiledSite, compileSite } from '#rules/plan/compile.ts';
import { siteWritten } from '#rules/site/schema.ts';
import { Drive } from '../engine/drive.ts';

const minuteMs = 60_000;
/** Every story begins here: midnight of a Monday in January, in UTC. */
export const storyBeginsMs = Date.UTC(2026, 0, 5);

export interface Story {
  /** What happens, as a shift book would say it. */
  readonly title: string;
  readonly tell: (line: Line) => void;
  /** The station as this story has it, where it is another. */
  readonly station?: string;
}

export interface Scenario {
  readonly kind: string;
  /** The station as a site file says it, in YAML. */
  readonly station: string;
  /** More of the site file, as `fire_plan`. */
  readonly site?: object;
  readonly sheet?: Partial<SheetWritten>;
  readonly stories: readonly Story[];
  /** Rules that no value ends, and why: `mould-cold: …`. Empty where each clears, latches or holds. */
  readonly stays?: Readonly<Record<string, string>>;
}

/** The station in the engine; times are minutes since the story began. */
export class Line {
  readonly site: CompiledSite;
  private readonly drive: Drive;

  constructor(scenario: Scenario) {
    this.site = compiledOf(scenario);
    this.drive = new Drive(this.site.plan, storyBeginsMs);
  }

  get effects(): readonly Effect[] {
    return this.drive.effects;
  }

  /** Readings of several signals side by side, every `everyS` seconds from `fromMin` to before `toMin`. */
  run(
    fromMin: number,
    toMin: number,
    values: Readonly<Record<string, number | ((minute: number) => number)>>,
    everyS = 10,
  ): this {
    for (let minute = fromMin; minute < toMin - 1e-9; minute += everyS / 60) {
      const at = atMs(minute);
      for (const [signal, value] of Object.entries(values))
        this.drive.offer({
          signal: `l/x/${signal}`,
          at,
          value: this.rounded(signal, typeof value === 'number' ? value : value(minute)),
        });
      this.drive.advance(at);
    }
    return this;
  }

  /** Nothing is read; time passes. */
  waitTo(minute: number): this {
    this.drive.advance(atMs(minute));
    return this;
  }

  /** Somebody writes down that something happened, now or, with `happenedMin`, earlier. */
  mark(minute: number, mark: string, item?: string, happenedMin?: number): this {
    const command: MarkCommand = {
      kind: 'command',
      verb: 'mark',
      judged: atMs(minute),
      station: 'l/x',
      mark,
      by: 'operator',
      ...(item === undefined ? {} : { item }),
      ...(happenedMin === undefined ? {} : { at: atMs(happenedMin) }),
    };
    this.drive.input(command).advance(command.judged);
    return this;
  }

  /** Quality puts something on hold. */
  hold(minute: number, what: HoldWhat, item: string): this {
    const command = { kind: 'command', verb: 'hold', judged: atMs(minute) } as const;
    this.drive.input({ ...command, what, item, by: 'quality', reason: 'a panel failed' });
    this.drive.advance(command.judged);
    return this;
  }

  /** Quality lifts the newest hold of it. */
  lift(minute: number, item: string): this {
    const hold = this.drive.engine.present.alarms.holds
      .list()
      .findLast((each) => each.item === item);
    if (hold === undefined) throw new Error(`${item} is not on hold`);
    this.drive.input({
      kind: 'command',
      verb: 'lift',
      judged: atMs(minute),
      hold: hold.id,
      disposition: 'released-after-test',
      by: 'quality',
      reason: 'the second panel held',
    });
    this.drive.advance(atMs(minute));
    return this;
  }

  private rounded(signal: string, value: number): number {
    const found = this.site.plan.signals.find(({ id }) => id === `l/x/${signal}`);
    if (found === undefined) throw new Error(`the station has no signal ${signal}`);
    return found.digits === null ? value : Number(value.toFixed(found.digits));
  }
}

const atMs = (minute: number): number => storyBeginsMs + Math.round(minute * minuteMs);

function compiledOf({ kind, station, sheet, site = {} }: Scenario): CompiledSite {
  const written = siteWritten.parse({
    site: 'works',
    timezone: 'Etc/UTC',
    materials: { 'adhesive-a': 'a.yaml' },
    ...site,
    lines: { l: { x: { kind, ...parse(station) } } },
  });
  const read = readSheet({ name: 'A', source: 'made for this test', ...sheet });
  const compiled = compileSite(written, { 'adhesive-a': read.sheet }, {}, 'r');
  if (compiled.problems.length > 0)
    throw new Error(`${kind}: ${JSON.stringify(compiled.problems, null, 1)}`);
  return compiled;
}

/** One story as people are told it: `HH:MM:SS transition rule …`, and the sentence below what is raised. */
export function toldIn(line: Line): string[] {
  const cards = new Map(line.site.rules.map((card) => [card.id, card]));
  return line.effects.flatMap((effect) => {
    if (effect.kind === 'hold')
      return [`${clock(effect.judged)}  hold ${effect.action}  ${effect.what} ${effect.item}`];
    if (effect.kind !== 'transition') return [];
    const { judged, transition, rule, priority, to, again } = effect;
    const card = cards.get(rule)!;
    if (again !== undefined) return [`${clock(judged)}  told again  ${rule.slice('l/x/'.length)}`];
    const head = `${clock(judged)}  ${transition}  ${rule.slice('l/x/'.length)}`;
    if (transition === 'returned') return [to === 'normal' ? head : `${head}  ${to}`];
    return [`${head}  ${card.label.word} ${priority}`, `          ${sentence(line, card, effect)}`];
  });
}

function sentence(
  line: Line,
  card: RuleCard,
  effect: Extract<Effect, { kind: 'transition' }>,
): string {
  const signal = line.site.plan.signals.find(({ id }) => id === effect.signal) ?? null;
  const kind = ruleKinds.get(card.kind)!;
  const subject = subjectOf(card, signal, 'Etc/UTC');
  return sayAlarm(
    card.label,
    (seen) => kind.sentence(seen),
    subject,
    effect.evidence,
    effect.judged,
  );
}

/** 00:05:10, with the day in front where it is not the first. */
function clock(ms: number): string {
  const day = Math.floor((ms - storyBeginsMs) / (24 * 60 * minuteMs));
  const time = new Date(ms).toISOString().slice(11, 19);
  return day === 0 ? time : `day ${day + 1} ${time}`;
}
