/**
 * GET /api/alarms and what people do to an alarm: take it on or pass it on, put it aside, reset it.
 * A command is answered after it is committed.
 */
import type { z } from 'zod';
import { AgentError, type ErrorCode } from '../../errors.ts';
import { alarmAnswerSchema, alarmsSchema } from '../contract.ts';
import type { AlarmAnswer, AlarmCommand, AlarmQuery, WebPorts } from '../ports.ts';
import { inUnits } from '../reader-units.ts';
import {
  acknowledgeBody,
  alarmsQuery,
  defaults,
  emptyBody,
  nothing,
  occurrencePath,
  outOfServiceBody,
  resetBody,
  shelveBody,
} from '../requests.ts';
import { type Route, route } from '../route.ts';

const commandRefusals: readonly ErrorCode[] = [
  'WEB_OCCURRENCE_UNKNOWN',
  'WEB_COMMAND_REFUSED',
  'STORE_DISK_FULL',
  'STORE_DISK_FAILED',
];

const queryOf = (query: z.output<typeof alarmsQuery>, limit: number): AlarmQuery => ({
  limit,
  ...(query.state === undefined ? {} : { states: query.state }),
  ...(query.since === undefined ? {} : { sinceMs: query.since }),
  ...(query.until === undefined ? {} : { untilMs: query.until }),
});

export const alarmRoutes = (ports: WebPorts): Route[] => [
  listRoute(ports),
  command(ports, 'acknowledge', {
    verb: 'acknowledge',
    operation: 'acknowledgeAlarm',
    summary: 'Take an alarm on; it stops nothing.',
    body: acknowledgeBody,
    details: commented,
  }),
  command(ports, 'pass-on', {
    verb: 'pass-on',
    operation: 'passOnAlarm',
    summary:
      'Say that you cannot take it: the next person is asked, where there is one; the answer says who. It stays unacknowledged.',
    body: acknowledgeBody,
    details: commented,
  }),
  command(ports, 'shelve', {
    verb: 'shelve',
    operation: 'shelveAlarm',
    summary: 'Silence an alarm for some minutes, at most for as long as its priority allows.',
    body: shelveBody,
    details: ({ reason, minutes, one_shot: oneShot }) => ({
      reason,
      forMs: minutes * 60_000,
      ...(oneShot === true ? { oneShot } : {}),
    }),
  }),
  command(ports, 'unshelve', {
    verb: 'unshelve',
    operation: 'unshelveAlarm',
    summary: 'End a shelf before its time.',
    body: emptyBody,
    details: () => ({}),
  }),
  command(ports, 'reset', {
    verb: 'reset',
    operation: 'resetAlarm',
    summary: 'Close a latched alarm whose condition has gone.',
    description:
      'Where it is highly managed: with a reason of 10 letters or more, only while its reading is usable and within the limit, and by ehs or an administrator alone where people sign in; without people by anybody at the machine.',
    body: resetBody,
    details: (body) => (body?.reason === undefined ? {} : { reason: body.reason }),
  }),
  command(ports, 'out-of-service', {
    verb: 'remove-from-service',
    operation: 'removeAlarmFromService',
    summary: 'Take an alarm out of service for maintenance; also by the id of its rule.',
    description:
      'Where it is highly managed: with a reason of 10 letters or more and an end within 24 h; while it stands, ehs or an administrator alone where people sign in, and without people anybody at the machine.',
    body: outOfServiceBody,
    details: ({ reason, minutes }) => ({
      reason,
      ...(minutes === undefined ? {} : { forMs: minutes * 60_000 }),
    }),
  }),
  command(ports, 'return-to-service', {
    verb: 'return-to-service',
    operation: 'returnAlarmToService',
    summary: 'Maintenance is done; also by the id of its rule.',
    body: emptyBody,
    details: () => ({}),
  }),
];

const listRoute = (ports: WebPorts): Route =>
  route(
    {
      method: 'GET',
      url: '/api/alarms',
      operation: 'listAlarms',
      summary: 'Occurrences with state, label and evidence.',
      path: nothing,
      query: alarmsQuery,
      answers: { 200: { description: 'Newest raise first.', schema: alarmsSchema } },
      refusals: [],
    },
    ({ query }) => {
      const limit = query.limit ?? defaults.answerRows;
      const alarms = ports.alarms(queryOf(query, limit + 1));
      const { timezone } = ports.site();
      const units = query.units ?? 'canonical';
      return {
        alarms: alarms.slice(0, limit).map((alarm) => inUnits(alarm, units, timezone)),
        truncated: alarms.length > limit,
      };
    },
  );

/** As the wire has it; only where it was passed on. */
const asked = (
  found: Extract<AlarmAnswer, { outcome: 'accepted' }>['asked'],
): Pick<z.output<typeof alarmAnswerSchema>, 'asked'> =>
  found === undefined ? {} : { asked: { people: [...found.people], can_be_told: found.canBeTold } };

const commented = (body: z.output<typeof acknowledgeBody>): Pick<AlarmCommand, 'reason'> =>
  body?.comment === undefined || body.comment === '' ? {} : { reason: body.comment };

interface CommandRoute<B extends z.ZodType> {
  readonly verb: AlarmCommand['verb'];
  readonly operation: string;
  readonly summary: string;
  readonly description?: string;
  readonly body: B;
  readonly details: (body: z.output<B>) => Pick<AlarmCommand, 'reason' | 'forMs' | 'oneShot'>;
}

/** POST /api/alarms/{occurrence}/{ending}. */
function command<B extends z.ZodType>(
  ports: WebPorts,
  ending: string,
  { verb, operation, summary, description, body, details }: CommandRoute<B>,
): Route {
  return route(
    {
      method: 'POST',
      url: `/api/alarms/:occurrence/${ending}`,
      operation,
      summary,
      ...(description === undefined ? {} : { description }),
      path: occurrencePath,
      query: nothing,
      body,
      answers: { 200: { description: 'Done and on disk.', schema: alarmAnswerSchema } },
      refusals: commandRefusals,
    },
    async ({ path, body: given, by, caller }) => {
      const { occurrence } = path;
      const answer = await ports.commandAlarm({
        verb,
        occurrence,
        by,
        role: caller?.role ?? null,
        ...details(given),
      });
      if (answer.outcome === 'accepted')
        return {
          occurrence,
          state: answer.state,
          note: answer.note ?? null,
          ...asked(answer.asked),
        };
      if (answer.outcome === 'unknown') {
        throw new AgentError('WEB_OCCURRENCE_UNKNOWN', { id: occurrence });
      }
      throw new AgentError('WEB_COMMAND_REFUSED', { why: answer.why });
    },
  );
}
