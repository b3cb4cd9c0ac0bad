/** A rule as people read it: its texts filled in, its numbers with where they come from. */
import { fillFacts } from '#rules/alarm/say.ts';
import type { RuleCard } from '#rules/plan/card.ts';
import type { PlanSignal } from '#rules/plan/plan.ts';
import type { RuleView } from '../web/contract.ts';
import { factsOf, split, subjectOf, templateTexts } from './views.ts';

/** `signalOf`: a signal of the plan by its id; null where the plan has none. */
export function ruleView(card: RuleCard, signalOf: (id: string) => PlanSignal | null): RuleView {
  const signal = signalOf(card.signal);
  const { line, station } = split(card.id);
  const { consequence, steps, doNot, caution, german } = card.label;
  // No rule's own texts tell a time of day, so that the zone says nothing here.
  const subject = subjectOf(card, signal, 'UTC');
  const filled = (text: string): string => fillFacts(text, subject);
  return {
    id: card.id,
    line,
    station,
    kind: card.kind,
    summary: card.summary,
    signals: [...card.signals],
    marks: [...card.marks],
    unit: signal?.unit ?? '1',
    readiness: card.readiness,
    needs: [...card.needs],
    settings: Object.fromEntries(card.settings.map(({ setting, written }) => [setting, written])),
    priority: [...card.priority],
    word: card.label.word,
    hazard: card.hazard,
    people: card.hazardToPeople,
    gates: card.gates.map(({ signal: id, low, high }) => ({
      signal: id,
      low,
      high,
      unit: signalOf(id)?.unit ?? '1',
    })),
    suppressed_while: card.suppress.map((each) => ({
      because: each.because,
      signed_by: each.signedBy,
      signal: each.signal,
      low: each.low,
      high: each.high,
      unit: each.signal === null ? null : (signalOf(each.signal)?.unit ?? '1'),
      from: each.from,
      until: each.until,
      at_most_ms: each.atMostMs,
    })),
    hold: card.hold === null ? null : `${card.hold.what} ${card.hold.item}`,
    highly_managed: card.class.highlyManaged,
    latching: card.class.latching,
    consequence: filled(consequence),
    steps: steps.map(filled),
    do_not: doNot.map(filled),
    basis: card.settings
      .map(({ setting, basis }) => `${setting}: ${basis.mark}, ${basis.note}`)
      .join('; '),
    caution: filled(caution),
    respond_ms: card.respondMs,
    numbers: card.settings.map(({ setting, written, basis, confirmed }) => ({
      setting,
      written,
      mark: basis.mark,
      note: basis.note,
      source: basis.source,
      confirmed,
    })),
    template: {
      ...templateTexts(card.label),
      ...(german === undefined ? {} : { german: templateTexts(german) }),
      facts: factsOf(subject, {}, 0),
    },
  };
}
