/** A signal first heard after the page was read: the page is read anew, once and not once a sample. */
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { now } from '../agent/web/fake-ports.ts';

vi.stubGlobal('document', { documentElement: { dataset: {} } });
const { takeEvent, anewAfterMs } = await import('../../dashboards/state/load.ts');

/** What was asked of the agent, in order; each answer waits until it is given. */
let asked: string[] = [];
let answers: PromiseWithResolvers<Response>[] = [];

beforeEach(() => {
  vi.useFakeTimers();
  asked = [];
  answers = [];
  vi.stubGlobal('fetch', (path: string) => {
    asked.push(path);
    const answer = Promise.withResolvers<Response>();
    answers.push(answer);
    return answer.promise;
  });
});
afterEach(async () => {
  await noAnswer();
  vi.useRealTimers();
});

async function noAnswer(): Promise<void> {
  for (const answer of answers) answer.reject(new TypeError('no link'));
  await vi.advanceTimersByTimeAsync(0);
}

const sample = (signal: string): void =>
  takeEvent({
    event: 'sample',
    data: { signal, at: now, value: 1, quality: 'good', flags: [] } as never,
  });
const loadsAsked = (): number => asked.filter((path) => path === '/api/site').length;

test('a hundred samples of thirty unknown signals ask for the page once', async () => {
  for (let i = 0; i < 100; i += 1) sample(`l/bench/cell-${i % 30}`);
  await vi.advanceTimersByTimeAsync(anewAfterMs);
  expect(loadsAsked()).toBe(1);
  for (let i = 0; i < 100; i += 1) sample(`l/bench/cell-${i % 30}`);
  await vi.advanceTimersByTimeAsync(5 * anewAfterMs);
  expect(loadsAsked()).toBe(1); // the first is still on its way
});

test('where no answer comes nothing is thrown at large, and a later sample asks again', async () => {
  sample('l/bench/cell-1');
  await vi.advanceTimersByTimeAsync(anewAfterMs);
  await noAnswer();
  expect(loadsAsked()).toBe(1);
  sample('l/bench/cell-1');
  await vi.advanceTimersByTimeAsync(anewAfterMs);
  expect(loadsAsked()).toBe(2);
});
