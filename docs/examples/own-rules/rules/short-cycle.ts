/**
 * A machine that starts too often, and how far two thermometers are apart.
 *
 * A start is a rise of the signal above a level; short cycling is more starts within a time than
 * the machine's maker allows.
 */
import type { Forebond, Formula, Own, RuleKind } from './forebond.d.ts';

interface Limits {
  readonly level: number;
  readonly starts: number;
  readonly withinMs: number;
}

interface Memory {
  /** Running or not; null before the first reading. */
  above: boolean | null;
  /** When it started, the oldest first; never more than the limit and one. */
  starts: number[];
  value: number;
  at: number;
}

const keep = (limits: Limits, memory: Memory, now: number): void => {
  memory.starts = memory.starts.filter((start) => start > now - limits.withinMs);
};

const answer = (limits: Limits, memory: Memory): 0 | 1 =>
  memory.starts.length > limits.starts ? 1 : 0;

export default (forebond: Forebond): Own => {
  const shortCycle: RuleKind<Limits, Memory> = {
    name: 'short-cycle',
    version: 1,
    summary: 'The machine starts more often within a time than it may.',
    written: forebond.settings({
      level: forebond.quantity('Above this it runs.'),
      starts: forebond.number('How many starts are allowed within that time.'),
      within: forebond.duration('The time in which they are counted.'),
    }),
    compile: (read) => {
      const starts = read.number('starts', 6);
      if (!Number.isInteger(starts) || starts < 1 || starts > 100)
        read.report({ path: ['starts'], problem: 'it is no number from 1 to 100', fix: 'write 6' });
      return {
        level: read.limit('level') ?? 0,
        starts,
        withinMs: read.duration('within', 3_600_000),
      };
    },
    begin: () => ({ above: null, starts: [], value: 0, at: 0 }),
    sample: (limits, memory, reading, timer) => {
      const above = reading.value > limits.level;
      if (above && memory.above === false) memory.starts.push(reading.judged);
      memory.above = above;
      memory.value = reading.value;
      memory.at = reading.at;
      keep(limits, memory, reading.judged);
      if (memory.starts.length > limits.starts + 1) memory.starts.shift();
      // The oldest start drops out without a reading, too.
      const [oldest] = memory.starts;
      timer.at = oldest === undefined ? null : oldest + limits.withinMs + 1;
      return answer(limits, memory);
    },
    deadline: (limits, memory, at) => {
      keep(limits, memory, at);
      return answer(limits, memory);
    },
    gap: (_limits, memory) => {
      // What it did meanwhile nobody saw.
      memory.above = null;
      memory.starts = [];
    },
    shift: (memory, deltaMs) => {
      memory.at += deltaMs;
      memory.starts = memory.starts.map((start) => start + deltaMs);
    },
    evidence: (limits, memory) => ({
      value: memory.value,
      at: memory.at,
      items: memory.starts.length,
      perMs: limits.withinMs,
      ...(memory.starts[0] === undefined ? {} : { sinceMs: memory.starts[0] }),
    }),
    sentence: () => 'The machine started {$items} times within {$per}.',
  };

  const spread: Formula = {
    name: 'spread',
    summary: 'How far two thermometers are apart, never negative.',
    inputs: [
      { name: 'one', unit: 'Cel', meaning: 'a temperature' },
      { name: 'other', unit: 'Cel', meaning: 'a temperature beside it' },
    ],
    unit: 'K',
    digits: 1,
    source: 'a difference; the limit on it is the site’s own judgement',
    compute: (inputs) => Math.abs((inputs[0] ?? 0) - (inputs[1] ?? 0)),
  };

  return { kinds: [shortCycle], derived: [spread] };
};
