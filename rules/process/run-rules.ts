/**
 * Run rules: patterns in a control chart that a single point within the limits does not show.
 *
 * Points come as standard scores, (value - centre line) / sigma, oldest first. Every edge is strict:
 * a point on a line is neither beyond it nor within it, one on the centre line is on no side, two
 * equal points neither rise nor fall. A pattern is told at the point that completes it, so that
 * point must be part of it. The sets in use differ and are named: 8 points on one side or 9, 6
 * trending or 7. More rules find more and cry wolf more: all four Western Electric rules together
 * do so every 92 points of a sound process, the 3 sigma rule alone every 370.
 */

import type { Subject } from './subject.ts';

export const subject: Subject = {
  title: 'Run rules',
  about:
    'Patterns in a chart that no single point within the limits shows: too many on one side, a trend, two close to a limit. The sets in use differ, by 7, 8 or 9 points on one side and by 6 or 7 that trend, so a set is always named.',
  symbols: { z: 'standard score of a reading, (reading - centre line)/sigma' },
  source:
    'Western Electric 1956; Nelson, J. Quality Technology 16 (1984) 237-239; ISO 7870-2:2013 from memory',
  uncertainty:
    'a sound process is accused every 370 points by the 3 sigma rule alone, every 92 by the four Western Electric rules together; more often where readings are not independent',
  functions: {
    brokenRunRules: {
      formula: 'each pattern of the set, told at the point that completes it; edges strict',
      range: 'up to 15 newest points, all finite; nothing outside',
    },
  },
};

/** How many of the newest points look how. */
export type RunPattern =
  /** `count` of the newest `among` beyond `sigmas` on the same side. */
  | {
      readonly look: 'beyond';
      readonly sigmas: number;
      readonly count: number;
      readonly among: number;
    }
  /** All on one side of the centre line. */
  | { readonly look: 'one-side'; readonly count: number }
  /** Each higher than the one before, or each lower; so many points, one step fewer. */
  | { readonly look: 'trend'; readonly count: number }
  /** Up and down in turn. */
  | { readonly look: 'alternating'; readonly count: number }
  /** All closer to the centre line than 1 sigma, on either side. */
  | { readonly look: 'hugging'; readonly count: number }
  /** None within 1 sigma, some on either side. */
  | { readonly look: 'avoiding'; readonly count: number };

export interface RunRuleSet {
  readonly source: string;
  readonly rules: readonly RunPattern[];
}

const beyond3: RunPattern = { look: 'beyond', sigmas: 3, count: 1, among: 1 };
const twoOfThree: RunPattern = { look: 'beyond', sigmas: 2, count: 2, among: 3 };
const fourOfFive: RunPattern = { look: 'beyond', sigmas: 1, count: 4, among: 5 };

export const westernElectric: RunRuleSet = {
  source: 'Western Electric, Statistical Quality Control Handbook, 1956: four rules, 8 on one side',
  rules: [beyond3, twoOfThree, fourOfFive, { look: 'one-side', count: 8 }],
};

export const nelson: RunRuleSet = {
  source:
    'L. S. Nelson, J. Quality Technology 16 (1984) 237-239: eight rules, 9 on one side, 6 trending',
  rules: [
    beyond3,
    { look: 'one-side', count: 9 },
    { look: 'trend', count: 6 },
    { look: 'alternating', count: 14 },
    twoOfThree,
    fourOfFive,
    { look: 'hugging', count: 15 },
    { look: 'avoiding', count: 8 },
  ],
};

/** From memory of the standard, which this project has not read: take it up with its text in hand. */
export const iso7870: RunRuleSet = {
  source: 'ISO 7870-2:2013, Shewhart control charts, from memory: 7 on one side, 7 trending',
  rules: [beyond3, { look: 'one-side', count: 7 }, { look: 'trend', count: 7 }],
};

/** The longest pattern of these sets looks back so many points. */
export const runPointsMax = 15;

/**
 * Which rules of the set the newest of the first `count` scores completes, by index from 0, into
 * `into`; empty for none. Older points than the patterns need are not looked at. Null for a score
 * that is not finite among those looked at.
 */
export function brokenRunRules(
  scores: ArrayLike<number>,
  count: number,
  set: RunRuleSet,
  into: number[] = [],
): readonly number[] | null {
  into.length = 0;
  if (count > scores.length) return null;
  for (let i = Math.max(0, count - runPointsMax); i < count; i += 1) {
    if (!Number.isFinite(scores[i]!)) return null;
  }
  for (let rule = 0; rule < set.rules.length; rule += 1) {
    if (completes(scores, count, set.rules[rule]!)) into.push(rule);
  }
  return into;
}

function completes(scores: ArrayLike<number>, count: number, pattern: RunPattern): boolean {
  if (pattern.look === 'beyond') return isBeyond(scores, count, pattern);
  const first = count - pattern.count;
  if (first < 0 || count === 0) return false;
  switch (pattern.look) {
    case 'one-side':
      return onOneSide(scores, first, count);
    case 'trend':
      return steps(scores, first, count, 1);
    case 'alternating':
      return steps(scores, first, count, -1);
    case 'hugging':
      return everySize(scores, first, count, (size) => size < 1);
    case 'avoiding':
      return (
        everySize(scores, first, count, (size) => size > 1) && !onOneSide(scores, first, count)
      );
  }
}

function isBeyond(
  scores: ArrayLike<number>,
  count: number,
  pattern: Extract<RunPattern, { look: 'beyond' }>,
): boolean {
  const newest = scores[count - 1];
  if (newest === undefined || !(Math.abs(newest) > pattern.sigmas)) return false;
  let found = 0;
  for (let i = Math.max(0, count - pattern.among); i < count; i += 1) {
    if (scores[i]! * Math.sign(newest) > pattern.sigmas) found += 1;
  }
  return found >= pattern.count;
}

/** All over the centre line, or all under it. */
function onOneSide(scores: ArrayLike<number>, first: number, end: number): boolean {
  const side = Math.sign(scores[first]!);
  if (side === 0) return false;
  for (let i = first; i < end; i += 1) if (Math.sign(scores[i]!) !== side) return false;
  return true;
}

function everySize(
  scores: ArrayLike<number>,
  first: number,
  end: number,
  fits: (size: number) => boolean,
): boolean {
  for (let i = first; i < end; i += 1) if (!fits(Math.abs(scores[i]!))) return false;
  return true;
}

/** Each step the sign of the one before times `turn`: 1 goes on, -1 turns about. */
function steps(scores: ArrayLike<number>, first: number, end: number, turn: 1 | -1): boolean {
  let wanted = Math.sign(scores[first + 1]! - scores[first]!);
  if (wanted === 0) return false;
  for (let i = first + 1; i < end; i += 1) {
    if (Math.sign(scores[i]! - scores[i - 1]!) !== wanted) return false;
    wanted *= turn;
  }
  return true;
}
