/** Messages for tests of telling. */
import type { Message } from '#agent/notify/contract.ts';
import { deferral } from '#rules/alarm/label.ts';

const occurrence = 'mounts-2/oven-1/floor-hot@1764036360000';

export const aMessage = (facts: Partial<Message> = {}): Message => ({
  key: `${occurrence}/1/push/p-7f3a`,
  occurrence,
  thread: occurrence,
  kind: 'alarm',
  silent: false,
  language: 'en',
  title: 'WARNING · Oven 1, zone 3 floor',
  sentence: 'Oven 1, zone 3 floor at 104 °C, rising 2 °C a minute. Limit 112 °C, in 3 to 6 min.',
  consequence: 'Residue on the floor can catch fire.',
  steps: [
    'Smoke, glow, smell: fire alarm, leave.',
    'Heat down from the outside control.',
    'Tell EHS on call; watch from afar.',
  ],
  doNot: ['Do not go near the oven door.'],
  caution: 'A glowing residue flares up when air reaches it.',
  deferral,
  word: 'WARNING',
  priority: 'high',
  highlyManaged: false,
  url: `/#/alarm/${encodeURIComponent(occurrence)}`,
  at: 1_764_036_360_000,
  usefulUntil: Date.now() + 3_600_000,
  site: 'demo-works',
  station: 'mounts-2/oven-1',
  limitText: 'high limit 112 °C',
  count: 1,
  ...facts,
});
