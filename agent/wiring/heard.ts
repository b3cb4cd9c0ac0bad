/** Which signals have never been heard, and what that leaves unjudged. */
import type { LiveRule } from '#rules/engine/live-rule.ts';
import { unusable } from '#rules/engine/signals.ts';
import { causeOf, isBad } from '#rules/signal/quality.ts';
import type { UnheardView } from '../web/contract.ts';
import type { Core } from './core.ts';

type Because = UnheardView['because'];

/** A look at what the engine has heard; of one moment, to be used and let go. */
export class Heard {
  private readonly core: Core;
  private readonly derivedBy: ReadonlyMap<number, number>;
  private readonly sources = new Map<number, readonly number[]>();

  constructor(core: Core) {
    this.core = core;
    const { derived } = core.plans.now.plan;
    this.derivedBy = new Map(derived.map(({ signal }, i) => [signal, i]));
  }

  /** A reading came of it, or the engine remembers one from before a restart. */
  has(signal: number): boolean {
    const signals = this.core.live.running?.present.signals;
    if (signals === undefined) return false;
    return signals.known(signal) || (signals.unusable[signal]! & unusable.bad) !== 0;
  }

  /** The signals without a reading ever that keep this one from having any; itself, where it is measured. */
  missingFor(signal: number): readonly number[] {
    const known = this.sources.get(signal);
    if (known !== undefined) return known;
    const derived = this.derivedBy.get(signal);
    const missing = this.has(signal)
      ? []
      : derived === undefined
        ? [signal]
        : this.core.plans.now.plan.derived[derived]!.inputs.flatMap((i) => this.missingFor(i));
    this.sources.set(signal, missing);
    return missing;
  }

  /** Signals never heard that a rule judges or is gated by, and whether it judges without them. */
  missingOf(rule: LiveRule): { readonly signals: readonly number[]; readonly judges: boolean } {
    const { inputs, gates, hazardToPeople } = rule.plan;
    const lacking = inputs.filter((input) => this.missingFor(input).length > 0);
    const gating =
      hazardToPeople || rule.gate !== 'unreadable' ? [] : gates.map(({ signal }) => signal);
    const signals = [...lacking, ...gating].flatMap((signal) => this.missingFor(signal));
    const judges = lacking.length <= rule.spare && gating.every((each) => this.has(each));
    return { signals: [...new Set(signals)], judges };
  }

  /** What is said of one. */
  words(signal: number): Pick<UnheardView, 'topic' | 'because' | 'says' | 'fix'> {
    const { id, kind } = this.core.plans.now.plan.signals[signal]!;
    const topic = this.topicOf(signal);
    const because = this.because(signal, kind === 'manual');
    const [says, fix] = texts[because](id, topic ?? '');
    return { topic, because, says, fix };
  }

  /** What is said of a wildcard of which no place has been heard; `id` without a place. */
  placeWords(id: string): Pick<UnheardView, 'topic' | 'because' | 'says' | 'fix'> {
    const filter = this.core.plans.now.bindings.find((each) => each.id === id)?.filter ?? '';
    const [says, fix] = texts['no-place-heard'](id, filter);
    return { topic: filter === '' ? null : filter, because: 'no-place-heard', says, fix };
  }

  /** Why a derived signal has no usable value, in sentences; null where it has one. */
  whyNot(derived: number): string | null {
    const { plan } = this.core.plans.now;
    const {
      signal,
      inputs,
      keeps,
      marks = [],
    } = plan.derived[derived] as {
      signal: number;
      inputs: readonly number[];
      keeps?: unknown;
      marks?: readonly number[];
    };
    const present = this.core.live.running?.present;
    if (present === undefined) return 'The engine has not begun.';
    if (present.signals.usable(signal)) return null;
    const missing = [...new Set(inputs.flatMap((input) => this.missingFor(input)))];
    if (missing.length > 0) return missing.map((each) => this.words(each).says).join(' ');
    const blind = inputs.filter((input) => !present.signals.usable(input));
    if (blind.length > 0)
      return blind.map((input) => `${plan.signals[input]!.id} has no usable reading.`).join(' ');
    const unsaid = marks.map((mark) => plan.marks![mark]!.id);
    if (
      keeps !== undefined &&
      unsaid.length > 0 &&
      !unsaid.some((id) => present.marks.last.has(id))
    )
      return `Nobody has said ${unsaid.join(' or ')} yet.`;
    const quality = this.core.samples.latest(signal)?.quality ?? 0;
    const cause = isBad(quality) ? causeOf(quality) : null;
    return cause === null
      ? 'Its readings have come; it is not worked out yet.'
      : `${cause[0]!.toUpperCase()}${cause.slice(1)}.`;
  }

  private because(signal: number, byHand: boolean): Because {
    if (byHand) return 'never-entered';
    return this.core.samples.lateAt(signal) === null ? 'never-heard' : 'too-late';
  }

  private topicOf(signal: number): string | null {
    const { bindings } = this.core.plans.now;
    const bound = bindings.find(
      (each) => each.signal === signal || [...each.instances.values()].includes(signal),
    );
    return bound === undefined || bound.filter === '' ? null : bound.filter;
  }
}

const texts: Readonly<
  Record<Because, (id: string, topic: string) => readonly [says: string, fix: string]>
> = {
  'never-heard': (id, topic) => [
    `${id} has never been heard.`,
    `Its topic is ${topic}: see that its device runs and sends there, and that the site file names that topic.`,
  ],
  'no-place-heard': (id, topic) => [
    `No place of ${id} has been heard yet.`,
    `Its topic is ${topic}: see that its devices run and send there, and that the site file names that topic.`,
  ],
  'never-entered': (id) => [
    `${id} has never been entered.`,
    'Enter it by hand on the page of its station.',
  ],
  'too-late': (id, topic) => [
    `${id} has never been heard in time: what came on ${topic} was too old to be judged.`,
    'Set the clock of its sender, or give it a longer lateness in the site file.',
  ],
};
