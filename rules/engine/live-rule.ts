/**
 * One rule at work: its settings, its memory, its answer, and why it may not be judged just now.
 */
import type { RuleKind, Severity, Timer } from '../kinds/kind.ts';
import type { Plan, PlanRule } from '../plan/plan.ts';
import type { EpochMs } from '../signal/sample.ts';
import type { Signals } from './signals.ts';
import type { GateState, SavedRule } from './state.ts';

/** A rule's timer, kept among the deadlines: a reading that moves it makes no number on the heap. */
class DueTimer implements Timer {
  private readonly due: Float64Array;
  private readonly owner: number;

  constructor(due: Float64Array, owner: number) {
    this.due = due;
    this.owner = owner;
  }

  get at(): EpochMs | null {
    const due = this.due[this.owner]!;
    return due === Number.POSITIVE_INFINITY ? null : due;
  }

  set at(at: EpochMs | null) {
    this.due[this.owner] = at ?? Number.POSITIVE_INFINITY;
  }
}

export class LiveRule {
  // What every reading asks for stands first, and so together in memory.
  /** Since when it is unjudged; its deadline stands still with `remainingMs` to go. */
  frozenAt: EpochMs | null = null;
  /** Of all its gates together. */
  gate: GateState;
  /** `kind.sample`, to be called on its kind. */
  readonly sample: RuleKind['sample'];
  readonly kind: RuleKind;
  readonly settings: unknown;
  memory: unknown = null;
  readonly timer: Timer;
  readonly index: number;
  severity: Severity = 0;
  /** Its kind tells of items that pass a limit. */
  readonly passes: boolean;
  /** As in its plan. */
  readonly gates: PlanRule['gates'];
  readonly hazardToPeople: boolean;
  readonly plan: PlanRule;
  readonly key: string;
  /** `line/station/…`: the signal it is about, or the mark. */
  readonly about: string;
  /** The file its kind comes from is switched off: its kind is asked nothing. */
  off = false;
  /** How many of its inputs cannot be used, and how many it can do without. */
  unusable = 0;
  readonly spare: number;
  remainingMs: number | null = null;

  /** `due`: of the deadlines, by rule; whoever sets the timer tells them. */
  constructor(plan: Plan, index: number, due: Float64Array) {
    this.index = index;
    this.timer = new DueTimer(due, index);
    this.plan = plan.rules[index]!;
    this.kind = this.plan.kind;
    this.sample = this.kind.sample;
    this.spare =
      this.kind.without === undefined ? 0 : this.plan.inputs.length - this.kind.takes!.least;
    this.settings = this.plan.settings;
    this.passes = this.kind.passed !== undefined;
    this.gates = this.plan.gates;
    this.hazardToPeople = this.plan.hazardToPeople;
    this.gate = this.plan.gates.length === 0 || this.plan.hazardToPeople ? 'open' : 'unreadable';
    this.key = keyOf(plan, this.plan);
    const [signal] = this.plan.inputs;
    this.about =
      signal === undefined ? markId(plan, this.plan.marks![0]!) : plan.signals[signal]!.id;
  }

  get judged(): boolean {
    return this.frozenAt === null && this.gate === 'open';
  }

  /** What the signals of its gates say: one that is closed closes it, whatever the others are. */
  gateNow(signals: Signals): GateState {
    let unreadable = false;
    for (const { signal, low, high } of this.gates) {
      if (!signals.usable(signal)) unreadable = true;
      else if (!(signals.value[signal]! >= low && signals.value[signal]! <= high)) return 'closed';
    }
    return unreadable && !this.hazardToPeople ? 'unreadable' : 'open';
  }

  begin(at: EpochMs): void {
    this.timer.at = null;
    this.remainingMs = null;
    this.memory = this.off ? null : this.kind.begin(this.settings, at, this.timer);
  }

  /** Its gates are open again at `at`. */
  reopen(at: EpochMs): void {
    if (this.kind.reopen === undefined) this.begin(at);
    else this.kind.reopen(this.settings, this.memory, at, this.timer);
  }

  /** Other terms than those it was saved under. */
  differs(saved: SavedRule): boolean {
    return saved.kind !== this.kind.name || saved.key !== this.key;
  }

  /** Its memory began anew, and its alarm stands since `sinceMs`. */
  stand(sinceMs: EpochMs): void {
    if (!this.off)
      this.kind.stand?.(this.settings, this.memory, this.severity, sinceMs, this.timer);
  }

  /** Takes over saved memory; false where it does not fit and must begin anew at `now`. */
  resume(saved: SavedRule, now: EpochMs): boolean {
    const differs = this.differs(saved);
    if (differs && !(this.kind.outlives === true && sameAbout(saved, this))) return false;
    if (this.off || saved.off === true) return false;
    const memory =
      saved.version === this.kind.version
        ? saved.memory
        : (this.kind.migrate?.(saved.memory, saved.version) ?? null);
    if (memory === null) return false;
    this.memory = memory;
    this.timer.at = saved.deadline;
    this.gate = saved.gate;
    this.frozenAt = saved.frozenAt;
    this.remainingMs = saved.remainingMs;
    // By other settings it may be time already.
    if (differs && saved.frozenAt === null) this.timer.at = now;
    else if (differs) this.remainingMs = 0;
    return true;
  }

  save(): SavedRule {
    return {
      kind: this.kind.name,
      version: this.kind.version,
      key: this.key,
      memory: this.kind.save === undefined ? this.memory : this.kind.save(this.memory),
      deadline: this.timer.at,
      severity: this.severity,
      gate: this.gate,
      frozenAt: this.frozenAt,
      remainingMs: this.remainingMs,
      ...(this.off ? { off: true } : {}),
    };
  }

  /** A gate closed: nothing runs until all are open and the rule begins anew. */
  close(): void {
    this.frozenAt = null;
    this.remainingMs = null;
    this.timer.at = null;
  }

  /** Nothing was observed in between. */
  gap(fromMs: EpochMs, toMs: EpochMs): void {
    if (this.timer.at !== null) this.timer.at += toMs - fromMs;
    this.kind.gap(this.settings, this.memory, fromMs, toMs, this.timer);
  }

  /** One of its inputs can no longer be used. */
  without(input: number): void {
    if (!this.off) this.kind.without?.(this.memory, input, this.timer);
    // What is not judged waits for nothing.
    if (!this.judged) this.timer.at = null;
  }

  /** Its kind is asked nothing from `at` on; what it remembers is let go. */
  switchOff(at: EpochMs): void {
    this.off = true;
    this.memory = null;
    this.timer.at = null;
    if (this.frozenAt === null) this.freeze(at);
    this.remainingMs = null;
  }

  /** It begins anew. */
  switchOn(at: EpochMs): void {
    this.off = false;
    this.frozenAt = null;
    this.begin(at);
  }

  /** Stops its clock at `at`. */
  freeze(at: EpochMs): void {
    this.frozenAt = at;
    this.remainingMs = this.timer.at === null ? null : this.timer.at - at;
    this.timer.at = null;
  }

  /** Lets its clock go on at `at`; what went by in between was not observed. */
  thaw(at: EpochMs): void {
    const from = this.frozenAt ?? at;
    this.timer.at = this.remainingMs === null ? null : at + this.remainingMs;
    this.frozenAt = null;
    this.remainingMs = null;
    this.kind.gap(this.settings, this.memory, from, at, this.timer);
  }
}

function keyOf(plan: Plan, rule: PlanRule): string {
  const id = (signal: number): string => {
    const { id, unit } = plan.signals[signal]!;
    return `${id} ${unit}`;
  };
  const gates = rule.gates.map(({ signal, low, high }) => [id(signal), String(low), String(high)]);
  // One gate stands as it did when a rule could have but one: what was saved then goes on.
  const gate = gates.length === 0 ? null : gates.length === 1 ? gates[0] : gates;
  const marks = rule.marks?.map((mark) => markId(plan, mark)) ?? [];
  const judged = [rule.fingerprint, rule.inputs.map(id), gate];
  return JSON.stringify(marks.length === 0 ? judged : [...judged, marks]);
}

/** The same kind judges the same signals and marks; only its settings are others. */
function sameAbout(saved: SavedRule, { kind, key }: LiveRule): boolean {
  const about = (text: string): string => JSON.stringify((JSON.parse(text) as unknown[]).slice(1));
  return saved.kind === kind.name && about(saved.key) === about(key);
}

const markId = (plan: Plan, mark: number): string => plan.marks![mark]!.id;
