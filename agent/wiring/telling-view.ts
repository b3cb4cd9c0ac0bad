/** What the page is told of telling. */
import type { PersonId } from '#rules/input.ts';
import type { ChannelName } from '../notify/contract.ts';
import type { Subject } from '../notify/ladder.ts';
import { targetsOf } from '../notify/targets.ts';
import type { TellingView, WaitingView } from '../web/telling-contract.ts';
import type { TellingPorts } from '../web/telling-ports.ts';
import type { Core } from './core.ts';
import { testSaid } from './telling-message.ts';

const noTelling = 'This agent tells nobody: it has neither people nor webhooks.';

function tellingView(core: Core, subject: Subject): TellingView {
  const at = core.tellingNow;
  const { telling } = core;
  if (telling === null) return { at, rungs: [], webhooks: [], causes: [noTelling] };
  const { rungs, causes } = telling.ladder(subject);
  const urgent = subject.priority === 'high';
  return {
    at,
    rungs: rungs.map((rung) => ({
      people: rung.map((person) => ({
        id: person.id,
        name: person.name,
        channels: targetsOf(person, urgent).map(({ channel }) => channel),
      })),
    })),
    webhooks: [...telling.webhooks],
    causes: [...causes],
  };
}

function waitingView(core: Core): WaitingView {
  const { telling } = core;
  if (telling === null) return { waiting: [], chases: [] };
  return {
    waiting: telling.outbox.waiting().map(({ row, parcel, sinceMs }) => ({
      key: parcel.message.key,
      occurrence: parcel.message.occurrence,
      kind: parcel.message.kind,
      title: parcel.message.title,
      person: parcel.target.person,
      to: parcel.target.person === null ? parcel.target.address : null,
      channel: parcel.target.channel,
      since: sinceMs,
      next_try: row.due,
      tries: row.tries,
      cause: row.cause,
    })),
    chases: telling
      .chases()
      .map(({ occurrence, waits, dueMs, rung }) => ({ occurrence, waits, due: dueMs, told: rung })),
  };
}

export const tellingPorts = (core: Core): TellingPorts => ({
  telling: (subject) => tellingView(core, subject),
  waitingMessages: () => waitingView(core),
  testTelling: (person) => testTelling(core, person),
});

const testTelling = (core: Core, person: PersonId): readonly ChannelName[] =>
  (core.telling?.test(person, (language) => testSaid(core, core.tellingNow, language)) ?? []).map(
    ({ channel }) => channel,
  );
