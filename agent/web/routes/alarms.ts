/**
 * GET /api/alarms and what people do to an occurrence: acknowledge, shelve, unshelve, reset.
 * A command is answered after it is committed.
 */
import type { z } from 'zod';
import { AgentError, type ErrorCode } from '../../errors.ts';
import { alarmAnswerSchema, alarmsSchema } from '../contract.ts';
import type { AlarmCommand, AlarmQuery, WebPorts } from '../ports.ts';
import { inUnits } from '../reader-units.ts';
import {
  acknowledgeBody,
  alarmsQuery,
  defaults,
  emptyBody,
  nothing,
  occurrencePath,
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
  ),
  command(ports, 'acknowledge', acknowledgeBody, 'Take an alarm on; it stops nothing.', (body) =>
    body?.comment === undefined || body.comment === '' ? {} : { reason: body.comment },
  ),
  command(ports, 'shelve', shelveBody, 'Silence an alarm for some minutes.', (body) => ({
    reason: body.reason,
    forMs: body.minutes * 60_000,
  })),
  command(ports, 'unshelve', emptyBody, 'End a shelf before its time.', () => ({})),
  command(ports, 'reset', emptyBody, 'Close a latched alarm whose condition has gone.', () => ({})),
];

/** POST /api/alarms/{occurrence}/{verb}. */
function command<B extends z.ZodType>(
  ports: WebPorts,
  verb: AlarmCommand['verb'],
  body: B,
  summary: string,
  details: (body: z.output<B>) => Pick<AlarmCommand, 'reason' | 'forMs'>,
): Route {
  return route(
    {
      method: 'POST',
      url: `/api/alarms/:occurrence/${verb}`,
      operation: `${verb}Alarm`,
      summary,
      path: occurrencePath,
      query: nothing,
      body,
      answers: { 200: { description: 'Done and on disk.', schema: alarmAnswerSchema } },
      refusals: commandRefusals,
    },
    async ({ path, body: given, by }) => {
      const { occurrence } = path;
      const answer = await ports.commandAlarm({
        verb,
        occurrence,
        by,
        ...details(given),
      });
      if (answer.outcome === 'accepted')
        return { occurrence, state: answer.state, note: answer.note ?? null };
      if (answer.outcome === 'unknown') {
        throw new AgentError('WEB_OCCURRENCE_UNKNOWN', { id: occurrence });
      }
      throw new AgentError('WEB_COMMAND_REFUSED', { why: answer.why });
    },
  );
}
