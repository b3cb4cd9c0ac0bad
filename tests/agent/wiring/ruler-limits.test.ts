/** Whether a limit itself counts as past goes with it to the page. */
import { expect, test } from 'vitest';
import { rulerLimits } from '#agent/wiring/ruler-limits.ts';
import { freshFolder } from '../store/folders.ts';
import { Works } from './works.ts';

const rule = (more: string): string =>
  `{ kind: band, signal: a, ${more}, priority: low, consequence: C., actions: [A.] }`;
const lines = `
l:
  c:
    kind: custom
    signals:
      a: { topic: a, payload: { kind: plain }, unit: Cel }
    rules:
      beyond: ${rule('high: 30 Cel')}
      at: ${rule('high: 20 Cel, inclusive: true')}
`;

test('only where its rule has it so', () => {
  const { core } = new Works(freshFolder(), lines);
  const [found] = [...rulerLimits(core.plans.now.plan).values()];
  expect(found?.judgedAt).toEqual([
    { rule: 'l/c/at', side: 'high', limit: 20, at_limit: true },
    { rule: 'l/c/beyond', side: 'high', limit: 30 },
  ]);
});
