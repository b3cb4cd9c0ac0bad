/**
 * Inner names to outer ones: what the agent knows, in the shapes of the wire.
 */
import { deferral, type Label } from '#rules/alarm/label.ts';
import { fillFacts, type Spoken, type Subject, sayAlarm, spokenOf } from '#rules/alarm/say.ts';
import { sentenceFor } from '#rules/alarm/sentence.ts';
import { shelfMost } from '#rules/alarm/shelf.ts';
import { germanOf, inGerman } from '#rules/german/all.ts';
import type { Evidence } from '#rules/kinds/kind.ts';
import type { LabelTexts, RuleCard } from '#rules/plan/card.ts';
import { noOwnKinds, type OwnKinds, ruleKindOf } from '#rules/plan/own-kinds.ts';
import type { PlanSignal, ShelfMost } from '#rules/plan/plan.ts';
import { causeOf, gradeOf, isBad, type QualityCode } from '#rules/signal/quality.ts';
import type { EpochMs } from '#rules/signal/sample.ts';
import type { KeptHold } from '../alarms/desk.ts';
import type { Occurrence } from '../alarms/occurrence.ts';
import type { AlarmView, HoldView, SampleEvent, SignalView } from '../web/contract.ts';
import type { RulerLimits } from './ruler-limits.ts';
import type { Latest } from './sample-book.ts';

export const split = (id: string): { line: string; station: string; name: string } => {
  const [line = '', station = '', name = ''] = id.split('/');
  return { line, station, name };
};

const qualityView = (
  code: QualityCode,
): { grade: ReturnType<typeof gradeOf>; cause: string | null } => ({
  grade: gradeOf(code),
  cause: causeOf(code),
});

export function sampleView(signal: PlanSignal, latest: Latest): SampleEvent {
  return {
    signal: signal.id,
    at: latest.at,
    value: isBad(latest.quality) ? null : latest.value,
    unit: signal.unit,
    quality: qualityView(latest.quality),
  };
}

export function signalView(
  signal: PlanSignal,
  latest: Latest | null,
  lateAt: EpochMs | null,
  { limits, judgedAt }: RulerLimits,
): SignalView {
  const { line, station, name } = split(signal.id);
  const {
    value = null,
    at = null,
    quality = null,
  } = latest === null ? {} : sampleView(signal, latest);
  return {
    id: signal.id,
    line,
    station,
    signal: name,
    kind: signal.kind,
    unit: signal.unit,
    written_unit: signal.written ?? signal.unit,
    resolution: signal.digits === null ? null : 10 ** -signal.digits,
    expect_every_ms: signal.expectEveryMs,
    value,
    at,
    quality,
    late_at: lateAt,
    limits,
    judged_at: [...judgedAt],
  };
}

/** `signal` is null where the rule judges marks alone. */
export function subjectOf(card: RuleCard, signal: PlanSignal | null, timezone: string): Subject {
  return {
    station: card.station,
    signal: card.signal,
    signals: card.signals.length === 0 ? card.marks : card.signals,
    unit: signal?.unit ?? '1',
    ...(signal?.written === undefined ? {} : { written: signal.written }),
    digits: signal?.digits ?? null,
    facts: card.facts,
    timezone,
    container: card.hold?.what === 'container' ? card.hold.item : null,
  };
}

/** What stands for a rule that today's site no longer has. */
const departedLabel = (rule: string): Label => ({
  word: 'NOTICE',
  sentence: `${rule} is no longer part of this site.`,
  consequence: '',
  steps: [],
  doNot: [],
  caution: '',
});

export function alarmView(
  occurrence: Occurrence,
  card: RuleCard | null,
  signal: PlanSignal | null,
  timezone: string,
  own: OwnKinds = noOwnKinds,
  shelving: ShelfMost = shelfMost,
): AlarmView {
  const { line, station } = split(occurrence.rule);
  return {
    occurrence: occurrence.id,
    rule: occurrence.rule,
    line,
    station,
    signal: occurrence.signal,
    state: occurrence.state,
    severity: occurrence.severity,
    priority: occurrence.priority,
    highly_managed: card?.class.highlyManaged ?? false,
    latching: card?.class.latching ?? false,
    label: labelView(occurrence, card, signal, timezone, own),
    evidence: evidenceView(occurrence.evidence, signal?.unit ?? '1', card?.signals ?? []),
    raised: occurrence.raised,
    returned: occurrence.returned,
    acknowledged: occurrence.acknowledged,
    shelved_until: occurrence.shelvedUntil,
    shelved_once: occurrence.shelvedUntil !== null && occurrence.shelvedOnce === true,
    shelf_minutes_max:
      card === null || card.class.highlyManaged
        ? null
        : Math.floor(shelving[occurrence.priority] / 60_000),
    nuisance: occurrence.nuisance ?? null,
    judgeable: occurrence.judgeable,
    superseded_by: occurrence.supersededBy,
    transitions: occurrence.steps.map(({ judged, transition, from, to, by, reason, again }) => ({
      at: judged,
      transition,
      from,
      to,
      by,
      reason,
      ...(again === undefined ? {} : { again }),
    })),
    comments: [...(occurrence.comments ?? [])],
    told: [...(occurrence.told ?? [])],
  };
}

function labelView(
  occurrence: Occurrence,
  card: RuleCard | null,
  signal: PlanSignal | null,
  timezone: string,
  own: OwnKinds,
): AlarmView['label'] {
  if (card === null || (signal === null && card.signals.length > 0)) {
    const { doNot, ...label } = departedLabel(occurrence.rule);
    return { ...label, steps: [], do_not: [...doNot], deferral };
  }
  const subject = subjectOf(card, signal, timezone);
  const kind = ruleKindOf(own, card.kind)!;
  const filled = (text: string): string => fillFacts(text, subject);
  const { german } = card.label;
  const said = kind.sentence(occurrence.evidence);
  return {
    word: card.label.word,
    sentence: sayAlarm(
      card.label,
      (evidence) => kind.sentence(evidence),
      subject,
      occurrence.evidence,
      occurrence.evidenceAt,
    ),
    consequence: filled(card.label.consequence),
    steps: card.label.steps.map(filled),
    do_not: card.label.doNot.map(filled),
    caution: filled(card.label.caution),
    deferral,
    template: {
      at: occurrence.evidenceAt,
      sentence: sentenceFor(card.label.sentence ?? said, occurrence.evidence),
      ...templateTexts(card.label),
      ...(german === undefined
        ? {}
        : {
            german: {
              sentence: sentenceFor(german.sentence ?? inGerman(said), occurrence.evidence),
              ...templateTexts(german),
            },
          }),
      facts: factsOf(subject, occurrence.evidence, occurrence.evidenceAt),
    },
  };
}

export const templateTexts = ({ consequence, steps, doNot, caution }: LabelTexts) => ({
  ...{ consequence, steps: [...steps], do_not: [...doNot], caution },
});

/** With their German where they print words. */
export const factsOf = (
  subject: Subject,
  evidence: Evidence,
  now: EpochMs,
): Record<string, Spoken> =>
  Object.fromEntries(
    [...spokenOf(subject, evidence, now)].map(([name, fact]) => {
      const german = fact.kind === 'text' ? (fact.german ?? germanOf(fact.text)) : null;
      return [name, german === null || fact.kind !== 'text' ? fact : { ...fact, german }];
    }),
  );

const evidenceView = (
  evidence: Evidence,
  unit: string,
  signals: readonly string[],
): AlarmView['evidence'] => ({
  unit,
  value: evidence.value ?? null,
  at: evidence.at ?? null,
  limit: evidence.limit ?? null,
  side: evidence.side ?? null,
  since: evidence.sinceMs ?? null,
  slope_per_h: evidence.slopePerH ?? null,
  earliest: evidence.earliestMs ?? null,
  latest: evidence.latestMs ?? null,
  duration_ms: evidence.durationMs ?? null,
  cause: evidence.cause === undefined ? null : causeOf(evidence.cause),
  which: evidence.input === undefined ? null : (signals[evidence.input] ?? null),
  reference: evidence.reference ?? null,
  difference: evidence.difference ?? null,
  allowed: evidence.allowed ?? null,
  per_ms: evidence.perMs ?? null,
  other: evidence.other === undefined ? null : (signals[evidence.other] ?? null),
  pattern: evidence.pattern ?? null,
  reached_ms: evidence.reachedMs ?? null,
  required_ms: evidence.requiredMs ?? null,
  left_ms: evidence.leftMs ?? null,
  item: evidence.item ?? null,
  items: evidence.items ?? null,
  held_by: evidence.heldBy ?? null,
  held_for: evidence.heldFor ?? null,
});

/** `others`: holds that stand on the same thing besides it. */
export const holdView = (hold: KeptHold, others?: number): HoldView => ({
  id: hold.id,
  what: hold.what,
  item: hold.item,
  since: hold.since,
  by: hold.by,
  reason: hold.reason,
  occurrence: hold.occurrence,
  ...(others === undefined ? {} : { others }),
  lifted: hold.lifted,
});
