/**
 * The engine's present: what signals say, what rules answer, what cannot be judged just now.
 *
 * Holds for one plan; `rules/engine.ts` brings it samples and deadlines in order of time. A rule
 * whose reading cannot be used is unjudged: its alarm stays, its delays stand still. A gate that
 * cannot be read counts as open where people can be hurt, and leaves the rule unjudged elsewhere.
 */
import { endedBy } from '../alarm/ended-by.ts';
import type { AlarmEvent } from '../alarm/lifecycle.ts';
import { Holds } from '../hold/hold.ts';
import type { Command, Effect } from '../input.ts';
import type { Reading, Severity } from '../kinds/kind.ts';
import type { Plan } from '../plan/plan.ts';
import { firstBadCode } from '../signal/quality.ts';
import { type EpochMs, sampleFlag } from '../signal/sample.ts';
import { alarmResumed } from './alarm.ts';
import { Alarms, type Asked } from './alarms.ts';
import { Deadlines } from './deadlines.ts';
import { Derivation } from './derivation.ts';
import type { JudgementHost, SavedJudgement } from './host.ts';
import { LiveRule } from './live-rule.ts';
import { Marks } from './marks.ts';
import { Owners } from './owners.ts';
import { RuleBook } from './rule-book.ts';
import { Runs } from './runs.ts';
import { resume } from './saved.ts';
import { Signals, unusable } from './signals.ts';
import type { SwitchedOff } from './state.ts';
import { Suppression } from './suppression.ts';
import { tellHolds } from './tell-holds.ts';
import { Wiring } from './wiring.ts';

/** One for all: no object a sample. */
const unasked: Asked = {};

export class Judgement {
  readonly plan: Plan;
  readonly rules: readonly LiveRule[];
  /** What the alarms ask. */
  readonly book: RuleBook;
  readonly alarms: Alarms;
  readonly deadlines: Deadlines;
  readonly wiring: Wiring;
  readonly runs: Runs;
  readonly marks: Marks;
  readonly suppression: Suppression;
  private readonly owners: Owners;
  private readonly host: JudgementHost;
  readonly signals: Signals;
  readonly derivation: Derivation;
  /** Files of the site's own rules that are switched off, by `RuleKind.extension`. */
  readonly off: Map<string, SwitchedOff>;
  private readonly reading: Reading = { at: 0, judged: 0, value: 0, quality: 0, input: 0 };

  constructor(plan: Plan, saved: SavedJudgement | null, host: JudgementHost) {
    this.plan = plan;
    this.host = host;
    this.off = new Map(Object.entries(saved?.off ?? {}));
    this.owners = new Owners(plan);
    this.deadlines = new Deadlines(this.owners.count);
    this.rules = plan.rules.map((_, i) => new LiveRule(plan, i, this.deadlines.due));
    for (const rule of this.rules) rule.off = this.off.has(rule.kind.extension ?? '');
    this.wiring = new Wiring(plan, this.rules);
    this.book = new RuleBook(plan, this.rules, this.deadlines, host);
    this.signals = new Signals(plan, saved?.latest ?? {});
    const off = new Set(this.off.keys());
    this.derivation = new Derivation(plan, this.signals, saved?.derived ?? {}, host.now, off);
    const alarms = plan.rules.map(({ id }) => alarmResumed(saved?.alarms[id], host.now));
    const holds = new Holds(saved?.holds ?? null);
    this.alarms = new Alarms(this.book, alarms, holds, this.wiring.ruleIndex);
    this.runs = new Runs(plan, saved?.runs ?? {}, saved?.racks, this);
    this.derivation.heats = this.runs.heats;
    this.marks = this.book.hear(new Marks(plan, saved?.marks ?? {}, this), this.runs.heats);
    this.suppression = new Suppression(plan, this);
    this.alarms.holding.changed = () => tellHolds(this, this.rules);
    resume(this, saved);
  }

  get now(): EpochMs {
    return this.host.now;
  }

  command(command: Command): void {
    if (command.verb === 'mark') this.marks.take(command);
    else this.alarms.command(command);
    if (command.verb === 'return-to-service') this.suppression.lookAll();
  }

  emit(effect: Effect): void {
    this.host.emit(effect);
  }

  apply(signal: number, at: EpochMs, value: number, code: number, flags: number): void {
    if (code >= firstBadCode) {
      this.applyBad(signal, at, code);
      return;
    }
    const { health, gated, rules, inputs, derived } = this.wiring;
    this.signals.set(signal, at, value, code);
    this.read(signal);
    if ((flags & sampleFlag.noSignOfLife) === 0)
      for (let i = health.starts[signal]!; i < health.starts[signal + 1]!; i += 1)
        if (health.items[i]!.judged) this.judge(health.items[i]!, 0);
    const bits = this.signals.unusable[signal]!;
    if ((bits & unusable.bad) !== 0) this.setUnusable(signal, bits & ~unusable.bad);
    if (this.suppression.listens[signal] === 1) this.suppression.signal(signal);
    for (let i = gated.starts[signal]!; i < gated.starts[signal + 1]!; i += 1)
      this.lookAtGate(gated.items[i]!, signal);
    if (this.runs.listens[signal] === 1) this.runs.sample(signal, this.now, value);
    for (let i = rules.starts[signal]!; i < rules.starts[signal + 1]!; i += 1) {
      const rule = rules.items[i]!;
      if (!rule.judged) continue;
      this.read(signal);
      this.judge(rule, inputs.items[i]!);
    }
    for (let i = derived.starts[signal]!; i < derived.starts[signal + 1]!; i += 1)
      if (this.derivation.awaited[derived.items[i]!] === 0) this.schedule(derived.items[i]!);
  }

  /** The owner's deadline `at` came. */
  fire(owner: number, at: EpochMs): void {
    const { length } = this.rules;
    const waited = this.owners.waitOf(owner);
    if (owner < length) this.ruleDue(this.rules[owner]!, at);
    else if (waited === null) this.compute(owner - length);
    else if (waited.wait === 'shelf') this.alarms.happen(waited.rule, 'unshelve', at);
    else if (waited.wait === 'again') this.alarms.againDue(waited.rule);
    else this.suppression.due(waited.rule);
  }

  private applyBad(signal: number, at: EpochMs, code: number): void {
    const { reading } = this;
    Object.assign(reading, { at, judged: this.now, value: 0, quality: code, input: 0 });
    for (const rule of this.wiring.health.of(signal)) {
      if (!rule.judged || rule.kind.unusable === undefined) continue;
      const severity = rule.kind.unusable(rule.settings, rule.memory, reading, rule.timer);
      this.settle(rule, severity, at);
    }
    this.setUnusable(signal, this.signals.unusable[signal]! | unusable.bad);
  }

  /** Lays the signal's latest reading before the rules. */
  private read(signal: number): void {
    this.signals.read(signal, this.host.now, this.reading);
  }

  private judge(rule: LiveRule, input: number): void {
    this.reading.input = input;
    const { kind, settings, memory, timer } = rule;
    const severity = rule.sample.call(kind, settings, memory, this.reading, timer);
    this.deadlines.moved(rule.index);
    if (severity !== rule.severity) this.changed(rule, severity, this.reading.at);
    if (rule.passes) this.alarms.holding.passed(rule);
  }

  private ruleDue(rule: LiveRule, at: EpochMs): void {
    rule.timer.at = null;
    const { kind, settings, memory, timer } = rule;
    this.settle(rule, kind.deadline?.(settings, memory, at, timer) ?? rule.severity, at);
  }

  settle(rule: LiveRule, severity: Severity, at: EpochMs, why = unasked): void {
    this.deadlines.set(rule.index, rule.timer.at);
    if (severity !== rule.severity) this.changed(rule, severity, at, why);
    if (rule.passes) this.alarms.holding.passed(rule);
  }

  private changed(rule: LiveRule, severity: Severity, at: EpochMs, why = unasked): void {
    const before = rule.severity;
    rule.severity = severity;
    const event: AlarmEvent | null =
      before === 0 ? 'raise' : severity === 0 ? 'clear' : severity > before ? 'escalate' : null;
    if (event !== null) this.alarms.happen(rule.index, event, at, why);
    if (rule.kind.watchesHealth !== true) return;
    const signal = rule.plan.inputs[0]!;
    const lost = this.wiring.health.of(signal).some((health) => health.severity > 0);
    const bits = this.signals.unusable[signal]! & ~unusable.lost;
    this.setUnusable(signal, lost ? bits | unusable.lost : bits);
  }

  private schedule(derived: number): void {
    const owner = this.rules.length + derived;
    const due = this.derivation.due(derived, this.now);
    if (due < this.deadlines.due[owner]!) this.deadlines.set(owner, due);
  }

  start(mark: number, at: EpochMs, item: string | null): void {
    for (const derived of this.derivation.start(mark, at, this.now)) this.schedule(derived);
    for (const derived of this.runs.heats.mark(mark, item, at, this.now)) this.schedule(derived);
    this.suppression.mark(mark);
  }

  private compute(index: number): void {
    const sample = this.derivation.compute(index, this.now);
    const { signal, keeping } = this.derivation.list[index]!;
    if (keeping !== null)
      this.deadlines.set(this.rules.length + index, this.derivation.wants(index));
    if (sample === null) return;
    this.host.derivedOut.push(signal, sample.at, this.now, sample.value, sample.quality, 0);
    this.apply(signal, sample.at, sample.value, sample.quality, 0);
  }

  private setUnusable(signal: number, bits: number): void {
    const was = this.signals.unusable[signal]!;
    this.signals.unusable[signal] = bits;
    if ((was !== 0) === (bits !== 0)) return;
    const { wiring } = this;
    const inputs = wiring.inputs.of(signal);
    for (const [i, rule] of wiring.rules.of(signal).entries()) {
      rule.unusable += bits === 0 ? -1 : 1;
      if (bits !== 0) this.goWithout(rule, inputs[i]!);
      const was = rule.frozenAt;
      this.freezeOrThaw(rule);
      // What its other inputs said meanwhile it has not seen.
      if (was !== null && rule.judged && rule.plan.inputs.length > 1)
        this.judgeLatest(rule, signal);
    }
    this.suppression.signal(signal);
    for (const rule of wiring.gated.of(signal)) this.lookAtGate(rule, signal);
    if (bits !== 0) this.runs.blind(signal);
    for (const derived of wiring.derived.of(signal)) {
      if (bits !== 0) this.derivation.blind(derived, this.now);
      this.schedule(derived);
    }
  }

  private goWithout(rule: LiveRule, input: number): void {
    rule.without(input);
    if (rule.judged) this.deadlines.set(rule.index, rule.timer.at);
  }

  freezeOrThaw(rule: LiveRule): void {
    const freeze =
      rule.off ||
      (rule.gate !== 'closed' && (rule.unusable > rule.spare || rule.gate === 'unreadable'));
    if (freeze === (rule.frozenAt !== null)) return;
    if (freeze) rule.freeze(this.now);
    else rule.thaw(this.now);
    this.deadlines.set(rule.index, rule.timer.at);
    this.tellJudgeable(rule, !freeze);
  }

  lookAtGate(rule: LiveRule, trigger: number): void {
    const was = rule.gate;
    rule.gate = rule.gateNow(this.signals);
    if (rule.gate === was || rule.off) return;
    if (rule.gate === 'closed') {
      rule.close();
      this.settle(rule, 0, this.now, { reason: endedBy.gate });
    } else if (was === 'closed') {
      rule.reopen(this.now);
      this.deadlines.set(rule.index, rule.timer.at);
    }
    this.freezeOrThaw(rule);
    if (was === 'closed' && rule.judged) this.judgeLatest(rule, trigger);
  }

  switchDerived(extension: string, off: boolean): void {
    for (const derived of this.derivation.switch(extension, off, this.now)) this.schedule(derived);
  }

  takeUp(rule: LiveRule): void {
    this.deadlines.set(rule.index, rule.timer.at);
    if (rule.gate === 'closed') {
      rule.close();
      this.settle(rule, 0, this.now, { reason: endedBy.gate });
    }
    this.freezeOrThaw(rule);
    if (rule.judged) this.judgeLatest(rule, -1);
  }

  tellJudgeable(rule: LiveRule, judgeable: boolean): void {
    const { occurrence } = this.alarms.list[rule.index]!;
    const [judged, id] = [this.now, rule.plan.id];
    if (occurrence !== null)
      this.emit({ kind: 'judgeable', judged, rule: id, occurrence, judgeable });
  }

  /** Judges what is known already of a rule's inputs, but for the signal just arriving. */
  judgeLatest(rule: LiveRule, except: number): void {
    for (const [input, signal] of rule.plan.inputs.entries()) {
      if (signal === except || !this.signals.usable(signal)) continue;
      this.read(signal);
      this.judge(rule, input);
    }
  }

  /** Nothing was observed in between; every running deadline moves by the length. */
  gap(fromMs: EpochMs, toMs: EpochMs): void {
    this.runs.gap(fromMs);
    this.derivation.gap(fromMs, toMs);
    this.alarms.gap(fromMs, toMs);
    for (const rule of this.rules) {
      if (!rule.judged) continue;
      rule.gap(fromMs, toMs);
      this.deadlines.set(rule.index, rule.timer.at);
    }
  }
}
