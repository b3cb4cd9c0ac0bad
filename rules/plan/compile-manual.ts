/** A signal that people enter by hand: what it takes of a signal's settings, and what it may not have. */
import { parseDuration } from '../quantity/duration.ts';
import { handLatenessMsDefault } from '../site/bounds.ts';
import type { SignalWritten } from '../site/signal-schema.ts';
import type { Path, Report, SignalDraft } from './draft.ts';

const onlyOfMessages = [
  'topic',
  'names',
  'payload',
  'expect_every',
  'hold',
  'calibration',
  'sensor',
] as const;

/** Reports what makes no sense of a hand reading; gives its times. */
export function manualTimes(
  written: SignalWritten,
  path: Path,
  report: Report,
): Pick<SignalDraft, 'holdMs' | 'latenessMs' | 'expectEveryMs'> {
  for (const key of onlyOfMessages)
    if (written[key] !== undefined)
      report({
        path: [...path, key],
        problem: `a signal that is entered by hand has no ${key}`,
        fix: key === 'expect_every' ? 'Write due_every instead.' : `Take ${key} or by_hand out.`,
        atKey: true,
      });
  const duration = (key: 'lateness' | 'due_every'): number | null => {
    const text = written[key];
    if (text === undefined) return null;
    const read = parseDuration(text);
    if (read.ok && read.value > 0) return read.value;
    report({
      path: [...path, key],
      problem: read.ok ? 'nothing can be entered every 0 s' : read.problem,
      fix: 'Write a number, a space and ms, s, min, h or d, as "8 h".',
    });
    return null;
  };
  return {
    holdMs: 0,
    latenessMs: duration('lateness') ?? handLatenessMsDefault,
    expectEveryMs: duration('due_every'),
  };
}

/** How often somebody must enter it is of hand readings alone. */
export function reportDueEvery(written: SignalWritten, path: Path, report: Report): void {
  if (written.due_every === undefined) return;
  report({
    path: [...path, 'due_every'],
    problem: 'only what is entered by hand falls due',
    fix: 'Write expect_every instead, or by_hand: true without topic and payload.',
    atKey: true,
  });
}
