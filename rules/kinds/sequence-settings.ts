/** Settings of `sequence`: which signal or mark is the first thing, the second, the count of time. */
import { counted } from '../quantity/counted.ts';
import type { SettingsReader } from './settings.ts';

export interface Event {
  readonly mark: boolean;
  /** Of the rule's signals, or of its marks. */
  readonly input: number;
  /** Of a signal: it is so while the value lies within. Infinite where that side is free. */
  readonly low: number;
  readonly high: number;
}

export interface SequenceSettings {
  readonly first: Event;
  readonly second: Event;
  /** Always a signal. */
  readonly counting: Event | null;
  readonly withinMs: number | null;
  readonly notBeforeMs: number | null;
  readonly whileFirst: boolean;
}

type Role = 'first' | 'then' | 'counting';

const bounded = (read: SettingsReader, role: Role): boolean =>
  read.has(`${role}_low`) || read.has(`${role}_high`);

/** The roles in order, each with the input it takes; problems are reported. */
function inputsOf(read: SettingsReader): Readonly<Record<'first' | 'second' | 'counting', number>> {
  const signals = (['first', 'then', 'counting'] as const).filter((role) => bounded(read, role));
  const marks = (['first', 'then'] as const).filter((role) => !bounded(read, role));
  // One signal may be both: a mould that leaves "closed" and comes back to it.
  const both =
    read.signalCount === signals.length - 1 && bounded(read, 'first') && bounded(read, 'then');
  if (!both && read.signalCount !== signals.length)
    read.report({
      path: [],
      problem: `its bounds speak of ${counted(signals.length, 'signal')} (${signals.join(', ') || 'none'}), and it names ${read.signalCount}`,
      fix: 'name a signal for each of first, then and counting that has bounds, in that order',
    });
  if (read.marks.length !== marks.length)
    read.report({
      path: [],
      problem: `${marks.length} of first and then have no bounds and so are marks, and it names ${read.marks.length}`,
      fix: 'name a mark for each that has no bounds, the first one first; or give it bounds of a signal',
    });
  const place = (role: Role): number => {
    if (!bounded(read, role)) return role === 'then' ? marks.length - 1 : 0;
    const behind = both && role !== 'first' ? 1 : 0;
    return Math.max(0, Math.min(read.signalCount - 1, signals.indexOf(role) - behind));
  };
  return { first: place('first'), second: place('then'), counting: place('counting') };
}

function eventOf(read: SettingsReader, role: Role, input: number): Event {
  const mark = !bounded(read, role);
  const own = mark || read.signalCount === 0 ? read : read.of(input);
  const low = mark ? null : own.limit(`${role}_low`);
  const high = mark ? null : own.limit(`${role}_high`);
  if (low !== null && high !== null && low > high)
    read.report({
      path: [`${role}_low`],
      problem: 'it lies above the high bound',
      fix: 'swap the two',
    });
  return {
    mark,
    input,
    low: low ?? Number.NEGATIVE_INFINITY,
    high: high ?? Number.POSITIVE_INFINITY,
  };
}

export function compile(read: SettingsReader): SequenceSettings {
  const withinMs = read.has('within') ? read.duration('within', 0) : null;
  const notBeforeMs = read.has('not_before') ? read.duration('not_before', 0) : null;
  if (withinMs === null && notBeforeMs === null)
    read.report({
      path: [],
      problem: 'it waits for nothing',
      fix: 'give it within, not_before or both',
    });
  for (const [key, ms] of [
    ['within', withinMs],
    ['not_before', notBeforeMs],
  ] as const)
    if (ms === 0)
      read.report({ path: [key], problem: 'it is nothing', fix: 'make it more than 0 s' });
  if (withinMs !== null && notBeforeMs !== null && withinMs <= notBeforeMs)
    read.report({
      path: ['within'],
      problem: 'the second may not come before it is too late',
      fix: 'make within longer than not_before',
    });
  const inputs = inputsOf(read);
  const first = eventOf(read, 'first', inputs.first);
  const whileFirst = read.flag('while_first', false);
  if (whileFirst && first.mark)
    read.report({
      path: ['while_first'],
      problem: 'a mark is over as soon as it is said',
      fix: 'take it out, or give first_low or first_high and a signal',
    });
  return {
    first,
    second: eventOf(read, 'then', inputs.second),
    counting: bounded(read, 'counting') ? eventOf(read, 'counting', inputs.counting) : null,
    withinMs,
    notBeforeMs,
    whileFirst,
  };
}
