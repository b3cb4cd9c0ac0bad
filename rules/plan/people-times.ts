/**
 * How soon a reading is judged where people's safety leans on it. A long `hold` lets an alarm come late, a
 * short `lateness` throws readings away, a long `expect_every` lets silence go unnoticed.
 */
import { spanText } from '../alarm/say.ts';
import { holdMsDefault, latenessMsDefault } from '../site/bounds.ts';
import type { Report, RuleDraft, SignalDraft } from './draft.ts';
import { idOf } from './draft.ts';
import { leanedOn, type SignalChange } from './people-reach.ts';

/** Engineering judgement: twice the delay of the ignition limit's own alarm, and time for any network. */
const holdMsMost = 10_000;
/** Engineering judgement: a slow radio link, with a clock a little off. */
const latenessMsLeast = 60_000;
/** Engineering judgement: three of them and silence is told, while there is time to look. */
const expectEveryMsUsual = 300_000;

export function reportTimes(
  signals: Iterable<SignalDraft>,
  rules: readonly RuleDraft[],
  report: Report,
): void {
  for (const { path, holdMs, latenessMs } of measured(signals, rules)) {
    if (holdMs > holdMsMost)
      report({
        path: [...path, 'hold'],
        problem: `a rule that keeps people from harm would judge each reading ${spanText(holdMs)} late`,
        fix: `Make hold ${spanText(holdMsMost)} at most here (our judgement).`,
      });
    if (latenessMs < latenessMsLeast)
      report({
        path: [...path, 'lateness'],
        problem: `a rule that keeps people from harm would not judge a reading that comes ${spanText(latenessMs)} late`,
        fix: `Make lateness ${spanText(latenessMsLeast)} or more here (our judgement).`,
      });
  }
}

/** What the site file makes slower than usual. */
export const changedTimes = (
  signals: Iterable<SignalDraft>,
  rules: readonly RuleDraft[],
): SignalChange[] =>
  measured(signals, rules).flatMap(({ station, name, holdMs, latenessMs, expectEveryMs }) => {
    const signal = idOf(station, name, '');
    return [
      ...(holdMs > holdMsDefault ? [change(signal, 'hold', spanText(holdMsDefault), holdMs)] : []),
      ...(latenessMs < latenessMsDefault
        ? [change(signal, 'lateness', spanText(latenessMsDefault), latenessMs)]
        : []),
      ...(expectEveryMs !== null && expectEveryMs > expectEveryMsUsual
        ? [change(signal, 'expect_every', `at most ${spanText(expectEveryMsUsual)}`, expectEveryMs)]
        : []),
    ];
  });

const change = (signal: string, what: string, usual: string, ms: number): SignalChange => ({
  signal,
  what,
  usual,
  written: spanText(ms),
});

const measured = (signals: Iterable<SignalDraft>, rules: readonly RuleDraft[]): SignalDraft[] =>
  [...signals].filter((signal) => signal.kind === 'measured' && leanedOn(signal, rules));
