/** One rule kind alone: compiled as a site writes it, its timer run as the engine runs it. */
import type { Hold } from '#rules/hold/hold.ts';
import type { Evidence, MarkOf, OpenClock, RuleKind, Severity, Timer } from '#rules/kinds/kind.ts';
import type { SettingsProblem } from '#rules/kinds/settings.ts';
import { type ReadSignal, settingsReader } from '#rules/kinds/settings-reader.ts';
import { quality } from '#rules/signal/quality.ts';

const temperature: ReadSignal = { unit: 'Cel', digits: 1, expectEveryMs: null };

type Written = Readonly<Record<string, unknown>>;
/** One signal, or all of them in order; an empty list for a rule that judges none. */
type Signals = Partial<ReadSignal> | readonly Partial<ReadSignal>[];

const signalsOf = (given: Signals): ReadSignal[] =>
  (Array.isArray(given) ? given : [given]).map((signal) => ({ ...temperature, ...signal }));

/** What a kind finds wrong with settings: each as `<path>: <what> | <fix>`. */
export function problemsOf<S, M>(
  kind: RuleKind<S, M>,
  written: Written,
  signals: Signals = {},
  marks: readonly MarkOf[] = [],
): string[] {
  const problems: SettingsProblem[] = [];
  kind.compile(settingsReader(written, signalsOf(signals), problems, marks));
  return problems.map(({ path, problem, fix }) => `${path.join('.')}: ${problem} | ${fix}`);
}

export class Alone<S, M> {
  readonly settings: S;
  memory: M;
  /** `<judged> <severity>` whenever the answer changed. */
  readonly answers: string[] = [];
  severity: Severity = 0;
  readonly timer: Timer = { at: null };
  private readonly kind: RuleKind<S, M>;

  constructor(
    kind: RuleKind<S, M>,
    written: Written,
    signals: Signals = {},
    beganAt = 0,
    marks: readonly MarkOf[] = [],
  ) {
    const problems = problemsOf(kind, written, signals, marks);
    if (problems.length > 0) throw new Error(problems.join('\n'));
    this.kind = kind;
    this.settings = kind.compile(settingsReader(written, signalsOf(signals), [], marks));
    this.memory = kind.begin(this.settings, beganAt, this.timer);
  }

  /** Readings, each with the deadlines before it; a string is a quality that makes it unusable. */
  see(...readings: readonly (readonly [judged: number, value: number, input?: number])[]): this {
    for (const [judged, value, input = 0] of readings) {
      this.until(judged);
      const reading = { at: judged, judged, value, quality: 0, input };
      this.answer(judged, this.kind.sample(this.settings, this.memory, reading, this.timer));
    }
    return this;
  }

  /** Somebody says at `judged` what happened `at`, by default just then. */
  mark(judged: number, item: string | null, more: { at?: number; input?: number } = {}): this {
    this.until(judged);
    const marking = { at: judged, judged, item, input: 0, ...more };
    const { kind, settings, memory, timer } = this;
    this.answer(judged, kind.mark!(settings, memory, marking, timer));
    return this;
  }

  /** These holds stand from `judged` on. */
  stand(judged: number, ...standing: readonly Hold[]): this {
    this.until(judged);
    const { kind, settings, memory } = this;
    this.answer(judged, kind.holds!(settings, memory, standing, judged));
    return this;
  }

  refuses(item: string | null, input = 0): string | null {
    const marking = { at: 0, judged: 0, item, input };
    return this.kind.refuses!(this.settings, this.memory, marking);
  }

  get passed(): readonly string[] {
    return this.kind.passed!(this.memory);
  }

  get clocks(): readonly OpenClock[] {
    return this.kind.clocks!(this.settings, this.memory);
  }

  /** An input can no longer be used, of a kind that goes on without it. */
  without(input: number): this {
    this.kind.without?.(this.memory, input, this.timer);
    return this;
  }

  bad(judged: number, code: number = quality.undecodable): this {
    this.until(judged);
    const reading = { at: judged, judged, value: 0, quality: code, input: 0 };
    const severity = this.kind.unusable?.(this.settings, this.memory, reading, this.timer);
    this.answer(judged, severity ?? this.severity);
    return this;
  }

  /** Every deadline up to and at `to`. */
  until(to: number): this {
    while (this.timer.at !== null && this.timer.at <= to) {
      const at = this.timer.at;
      this.timer.at = null;
      const severity = this.kind.deadline?.(this.settings, this.memory, at, this.timer);
      this.answer(at, severity ?? this.severity);
    }
    return this;
  }

  /** Downtime, as the engine brings it. */
  gap(fromMs: number, toMs: number): this {
    this.until(fromMs);
    if (this.timer.at !== null) this.timer.at += toMs - fromMs;
    this.kind.gap(this.settings, this.memory, fromMs, toMs, this.timer);
    return this;
  }

  /** The clock was set anew. */
  shift(deltaMs: number): this {
    if (this.timer.at !== null) this.timer.at += deltaMs;
    this.kind.shift(this.memory, deltaMs);
    return this;
  }

  /** To disk and back. */
  throughJson(): this {
    this.memory = JSON.parse(JSON.stringify(this.memory));
    return this;
  }

  get evidence(): Evidence {
    return this.kind.evidence(this.settings, this.memory);
  }

  get sentence(): string {
    return this.kind.sentence(this.evidence);
  }

  private answer(at: number, severity: Severity): void {
    if (severity !== this.severity) this.answers.push(`${at} ${severity}`);
    this.severity = severity;
  }
}
