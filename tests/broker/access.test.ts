import { describe, expect, it } from 'vitest';
import {
  anonymousRow,
  mayPublish,
  mayRead,
  publishFilterFault,
  readFilterFault,
} from '#broker/access.ts';

const oven = {
  user: 'oven-1',
  publish: ['works/oven-1/+', 'works/shared'],
  read: ['works/oven-1/set/#'],
};
const greedy = { user: 'greedy', publish: ['#', 'forebond/#', '$SYS/#'], read: ['#', '$SYS/#'] };
const nobody = { user: 'nobody', publish: [], read: [] };

describe('publishing', () => {
  it.each([
    [oven, 'works/oven-1/air', true],
    [oven, 'works/shared', true],
    [oven, 'works/oven-2/air', 'not-listed'],
    [oven, 'works/oven-1', 'not-listed'],
    [oven, 'works/oven-1/air/deep', 'not-listed'],
    [oven, 'works/oven-1/+', 'wildcard'],
    [oven, '', 'empty'],
    [oven, 'works/oven-1/\u0000', 'nul'],
    [greedy, 'anything/at/all', true],
    [greedy, 'forebond', 'own'],
    [greedy, 'forebond/', 'own'],
    [greedy, 'forebond/works/heartbeat', 'own'],
    [greedy, '$SYS/broker', 'server'],
    [greedy, '$share/x', 'server'],
    [greedy, 'Forebond/works', true],
    [nobody, 'works/shared', 'not-listed'],
    [anonymousRow, 'any/topic', true],
    [anonymousRow, 'forebond/works/heartbeat', 'own'],
    [anonymousRow, '$SYS/x', 'server'],
  ] as const)('%o to %s: %s', (row, topic, want) => {
    const verdict = mayPublish(row, topic);
    expect(verdict.allow ? true : verdict.why).toBe(want);
  });
});

describe('reading', () => {
  it.each([
    [oven, 'works/oven-1/set/air', true],
    [oven, 'works/oven-1/set/#', true],
    [oven, 'works/oven-1/set', true],
    [oven, 'works/oven-1/set/+/x', true],
    [oven, 'works/oven-1/#', 'not-listed'],
    [oven, 'works/+/set/air', 'not-listed'],
    [oven, '#', 'not-listed'],
    [oven, '+/#', 'not-listed'],
    [oven, 'works/oven-1/set/a+', 'plus-not-alone'],
    [oven, 'works/oven-1/set/a#', 'hash-not-alone'],
    [oven, 'works/oven-1/set/#/a', 'hash-not-last'],
    [greedy, '#', true],
    [greedy, '$SYS/#', 'server'],
    [nobody, 'works/shared', 'not-listed'],
    [anonymousRow, 'forebond/#', true],
    [anonymousRow, 'forebond/works/+/+/alarm/#', true],
    [anonymousRow, '#', 'not-listed'],
    [anonymousRow, 'works/oven-1/air', 'not-listed'],
  ] as const)('%o with %s: %s', (row, filter, want) => {
    const verdict = mayRead(row, filter);
    expect(verdict.allow ? true : verdict.why).toBe(want);
  });
});

describe('filters of a row', () => {
  it('may not be for the agent or the server', () => {
    expect(publishFilterFault('forebond/#')).toBe('own');
    expect(publishFilterFault('forebond/works/+')).toBe('own');
    expect(publishFilterFault('forebond')).toBe('own');
    expect(publishFilterFault('$SYS/#')).toBe('server');
    expect(publishFilterFault('a+')).toBe('plus-not-alone');
    expect(publishFilterFault('#')).toBeNull();
    expect(readFilterFault('forebond/#')).toBeNull();
    expect(readFilterFault('$SYS/#')).toBe('server');
    expect(readFilterFault('')).toBe('empty');
  });
});
