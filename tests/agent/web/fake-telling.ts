/** What telling answers, made up. */
import type { TellingPorts, TellingSubject } from '#agent/web/telling-ports.ts';
import { now } from './moment.ts';

export class FakeTelling implements TellingPorts {
  readonly asked: TellingSubject[] = [];
  readonly tested: string[] = [];
  /** People who can be told. */
  reachable: readonly string[] = ['anna', 'local'];

  telling(subject: TellingSubject): ReturnType<TellingPorts['telling']> {
    this.asked.push(subject);
    const people = [{ id: 'anna', name: 'Anna', channels: ['push' as const] }];
    return { at: now, rungs: [{ people }], webhooks: ['board'], causes: ['Ben has no phone.'] };
  }

  waitingMessages(): ReturnType<TellingPorts['waitingMessages']> {
    return {
      waiting: [
        {
          key: 'l/s/r@1/0/push/anna',
          occurrence: 'l/s/r@1',
          kind: 'alarm',
          title: 'NOTICE · l/s',
          person: 'anna',
          to: null,
          channel: 'push',
          since: now,
          next_try: now + 5_000,
          tries: 1,
          cause: 'There is no network.',
        },
      ],
      chases: [{ occurrence: 'l/s/r@1', waits: 'answer', due: now + 60_000, told: 1 }],
    };
  }

  testTelling(person: string): ReturnType<TellingPorts['testTelling']> {
    if (!this.reachable.includes(person)) return [];
    this.tested.push(person);
    return ['push'];
  }
}
