/** The limits of a ruler in words: its own, or those of the rules that judge its signal with others. */
import type { RuleView, SignalView } from '../../agent/web/contract.ts';
import { limitInRule, type OwnLimit, type SideLimits } from '../judge/limits.ts';
import { gatesText } from '../text/gates.ts';
import { ruleName } from '../text/names.ts';
import { displayOf, plainNumber, plainQuantity, writtenQuantity } from '../text/quantity.ts';
import { say } from '../text/say.ts';

/** In words: an alarm's own limit before the others; else all of them, those met first first. */
export function limitsText(
  signal: SignalView,
  { low, high }: SideLimits,
  own: OwnLimit | null,
  rules: ReadonlyMap<string, RuleView>,
): string {
  const { symbol } = displayOf(signal);
  const list = (limits: readonly number[]) => ({
    n: limits.length,
    limits: `${limits.map((limit) => plainNumber(limit, signal)).join(', ')}\u00a0${symbol}`.trim(),
  });
  if (own !== null) {
    const others = [...low, ...high].filter((limit) => limit !== own.limit);
    const limit = say('ownLimit', { limit: plainQuantity(own.limit, signal) });
    return others.length === 0 ? limit : `${limit}; ${say('otherLimits', list(others))}`;
  }
  const words = [
    ...(low.length === 0 ? [] : [say('lowLimits', list(low))]),
    ...(high.length === 0 ? [] : [say('highLimits', list(high))]),
  ];
  return words.length === 0 ? elsewhereText(signal, rules) : words.join(', ');
}

/** No limit of its own: those of the rules that judge it with others, as how far apart they may be. */
function elsewhereText({ id }: SignalView, rules: ReadonlyMap<string, RuleView>): string {
  const found = [...rules.values()]
    .filter(({ signals, readiness }) => readiness !== 'not-armed' && signals.includes(id))
    .flatMap((rule) => {
      const limit = limitInRule(rule);
      return limit === null
        ? []
        : [
            say('limitInRule', {
              rule: ruleName(rule.id),
              limit: writtenQuantity(limit.setting, limit.written),
            }),
          ];
    });
  return found.length === 0 ? say('noLimits') : found.join('; ');
}

/** None of its limits is judged now: in which states each would be. */
export function notJudgedText(
  limits: string,
  { judged_at: judgedAt }: SignalView,
  rules: ReadonlyMap<string, RuleView>,
): string {
  const gates = new Set(judgedAt.map(({ rule }) => gatesText(rules.get(rule)?.gates ?? [])));
  return say('notJudgedNow', { limits, gates: [...gates].join('; ') });
}
