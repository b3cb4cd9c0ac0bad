/** A topic that sends what cannot be read, as the agent would tell it. */
import type { RefusedTopicView } from '#agent/web/refused-contract.ts';

export const refusedTopics = (at: number): RefusedTopicView[] => [
  {
    topic: 'mounts-2/store-1/wall',
    count: 3,
    standing: true,
    messages: [
      {
        at,
        signal: 'mounts-2/store-1/wall',
        from: 'gateway',
        looked_for: '/v',
        found: 'no JSON',
        reason: 'not-json',
        why: 'The message is no JSON, and the site file promises it.',
        fix: 'Compare `payload` in the site file with how the message begins.',
        begins: 'hello',
        bytes: 5,
      },
    ],
  },
];
