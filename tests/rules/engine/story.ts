/**
 * Stories of a line as an agent lives them, and what is left of them in the record: what arrived in
 * which beat, who said what, when it was down, when its site changed.
 */
import { type Input, inputOrder } from '#rules/input.ts';
import { Drive, type Sample } from './drive.ts';
import { type Happening, happenings, type Story, start } from './happenings.ts';
import { otherFile, otherPlan, ownFile, plan, ruleIds } from './story-plans.ts';

const beatMs = 20;
export interface Recorded {
  readonly samples: Sample[];
  readonly inputs: Input[];
}

export interface Outcome {
  readonly effects: readonly unknown[];
  readonly derived: readonly string[];
  readonly end: ReturnType<Drive['engine']['save']>;
}

/** Finds files unfit, each after so many things that were judged. */
class Unfit {
  private readonly offs: { after: number; readonly own: boolean }[];
  private readonly entered: (input: Input) => void;

  constructor(offs: Story['offs'], entered: (input: Input) => void) {
    this.offs = offs.map((each) => ({ ...each }));
    this.entered = entered;
  }

  /** Asked after each thing that was judged. */
  get wanted(): { readonly extension: string; readonly why: string } | null {
    const [off] = this.offs;
    if (off === undefined) return null;
    off.after -= 1;
    return off.after >= 0 ? null : { extension: off.own ? ownFile : otherFile, why: 'unfit' };
  }

  done(input: Input): void {
    this.offs.shift();
    this.entered(input);
  }
}

/** The agent's turn, as agent/turn/live.ts takes it on the wall clock. */
class Life {
  readonly record: Recorded = { samples: [], inputs: [] };
  private drive: Drive;
  private readonly effects: unknown[] = [];
  private readonly derived: string[] = [];
  private beat: { readonly at: number; samples: Sample[]; inputs: Input[] } | null = null;
  private upFrom = start;
  private siteMoment = -1;

  constructor(offs: Story['offs']) {
    const unfit = new Unfit(offs, (input) => this.record.inputs.push(input));
    this.drive = new Drive(plan, start, [otherPlan], unfit);
  }

  happen(what: Happening): void {
    if (what.at < this.upFrom) return;
    this.flush(what.at);
    if (what.kind === 'arrival') this.arrive(what);
    else if (what.kind === 'command') this.openBeat(what.at).inputs.push(this.command(what));
    else if (what.kind === 'look') this.drive.advance(what.at);
    else if (what.kind === 'stop') this.stop(what.at, what.downMs);
    else if (what.kind === 'on') this.switchOn(what.at, what.own);
    else this.reload(what.at);
  }

  end(at: number): Outcome {
    this.flush(at);
    this.drive.advance(Math.max(at, this.now) + 30_000);
    this.collect();
    return { effects: this.effects, derived: this.derived, end: this.drive.engine.save() };
  }

  private get now(): number {
    return this.drive.engine.now;
  }

  private arrive({ at: clock, signal, value, behindMs, quality: code, flags }: Arrived): void {
    const { signals: known } = this.drive.engine.plan;
    const { at: beat, samples } = this.openBeat(clock);
    const found = known.find(({ id }) => id === signal);
    if (found === undefined) return;
    const at = found.holdMs > 0 ? clock - behindMs : beat;
    const judged = Math.max(at + found.holdMs, beat);
    samples.push({ signal, value, at, judged, quality: code, flags });
  }

  private command({ verb, rule, at }: Extract<Happening, { kind: 'command' }>): Input {
    const judged = this.beat!.at;
    const by = 'p1';
    const reason = 'because';
    if (verb === 'mark') {
      const mark = ['put', 'taken', 'done', 'begun', 'put', 'begun', 'another'][rule % 7]!;
      const item = ['done', 'begun', 'another'].includes(mark) ? {} : { item: `r-${rule % 4}` };
      const past = rule % 3 === 0 ? { at: at - 400 * rule } : {};
      return { kind: 'command', judged, verb, station: 'l/s', mark, by, ...item, ...past };
    }
    if (verb === 'hold')
      return { kind: 'command', judged, verb, what: 'lot', item: `lot-${rule % 3}`, by, reason };
    if (verb === 'lift') {
      const hold = `hold-${(rule % 3) + 1}`;
      return { kind: 'command', judged, verb, hold, disposition: 'released', by, reason };
    }
    // Few rules, or hardly one that was taken out is ever brought back.
    const id = ruleIds[verb.endsWith('-service') ? rule % 3 : rule]!;
    const alarms = this.drive.engine.present.alarms.list;
    const index = this.drive.engine.plan.rules.findIndex((each) => each.id === id);
    const occurrence = alarms[index]?.occurrence ?? id;
    const once = rule % 2 === 0 ? { oneShot: true as const } : {};
    return { kind: 'command', judged, verb, occurrence, by, reason, untilMs: at + 2_500, ...once };
  }

  private openBeat(clock: number): NonNullable<Life['beat']> {
    if (this.beat !== null && this.beat.at <= clock + 1) this.flush(this.beat.at);
    const from = Math.max(clock, this.now) + 1;
    this.beat ??= { at: Math.floor(from / beatMs) * beatMs + beatMs, samples: [], inputs: [] };
    return this.beat;
  }

  /** What is open is in the log and waits in the engine. */
  private rowOpen(): void {
    const { beat } = this;
    if (beat === null) return;
    this.drive.offer(...beat.samples);
    this.record.samples.push(...beat.samples);
    beat.samples = [];
  }

  private flush(clock: number): void {
    const { beat } = this;
    if (beat === null || beat.at > clock) return;
    this.rowOpen();
    for (const input of beat.inputs) this.enter(input);
    this.beat = null;
    this.drive.advance(beat.at);
  }

  private enter(input: Input): void {
    this.record.inputs.push(input);
    this.drive.input(input);
  }

  private reload(clock: number): void {
    this.openBeat(clock);
    this.rowOpen();
    const revision =
      this.drive.engine.plan.revision === plan.revision ? otherPlan.revision : plan.revision;
    const moment = this.siteMoment === this.now ? this.now : Math.max(this.now, clock) + 1;
    this.siteMoment = moment;
    this.enter({ kind: 'site', judged: moment, revision });
    this.drive.advance(moment);
  }

  private switchOn(clock: number, own: boolean): void {
    this.openBeat(clock);
    this.rowOpen();
    const at = Math.max(this.now, clock) + 1;
    this.siteMoment = -1;
    const extension = own ? ownFile : otherFile;
    this.enter({ kind: 'extension', judged: at, extension, off: null, at, turn: 0, by: 'p1' });
    this.drive.advance(at);
  }

  /** The process dies with its beat open, and what was taken is on disk; commands of it are not. */
  private stop(clock: number, downMs: number): void {
    this.rowOpen();
    this.beat = null;
    this.collect();
    this.drive = Drive.resume(this.drive);
    const toMs = clock + downMs;
    this.upFrom = toMs;
    if (downMs === 0 || toMs <= this.now) return;
    this.enter({ kind: 'gap', judged: this.now + 1, fromMs: this.now, toMs });
    this.drive.advance(toMs);
  }

  private collect(): void {
    this.effects.push(...this.drive.effects);
    this.derived.push(...this.drive.derived);
  }
}
type Arrived = Extract<Happening, { kind: 'arrival' }>;

export function live(of: Story): { readonly out: Outcome; readonly record: Recorded } {
  const life = new Life(of.offs);
  const all = happenings(of);
  for (const each of all) life.happen(each);
  return { out: life.end((all.at(-1)?.at ?? start) + 1_000), record: life.record };
}

/** The record in the order of judgement, fed at once. */
export function replayed(record: Recorded, end: number): Outcome {
  const drive = new Drive(plan, start, [otherPlan]);
  const samples = record.samples
    .map((s, order) => ({ s, order }))
    .sort(
      (x, y) =>
        x.s.judged! - y.s.judged! ||
        (x.s.signal < y.s.signal ? -1 : x.s.signal > y.s.signal ? 1 : 0) ||
        x.s.at - y.s.at ||
        x.order - y.order,
    )
    .map(({ s }) => s);
  let next = 0;
  const feedUntil = (due: (s: Sample) => boolean): void => {
    const from = next;
    while (next < samples.length && due(samples[next]!)) next += 1;
    const known = drive.engine.plan.signals.map(({ id }) => id);
    drive.feed(...samples.slice(from, next).filter(({ signal }) => known.includes(signal)));
  };
  const inputs = [...record.inputs].sort(
    (x, y) => x.judged - y.judged || inputOrder[x.kind] - inputOrder[y.kind],
  );
  for (const input of inputs) {
    const after = inputOrder[input.kind] > inputOrder.sample;
    feedUntil(({ judged }) => judged! < input.judged || (after && judged === input.judged));
    drive.input(input).advance(input.judged);
  }
  feedUntil(() => true);
  drive.advance(end);
  return { effects: drive.effects, derived: drive.derived, end: drive.engine.save() };
}
