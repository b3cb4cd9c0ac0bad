/** Holds: stops on a container, rack, lot or shot. Listed, set and lifted; lifting says what becomes of the thing. */
import { AgentError, type ErrorCode } from '../../errors.ts';
import { holdSchema, holdsSchema } from '../contract.ts';
import type { HoldCommand, HoldQuery, WebPorts } from '../ports.ts';
import { defaults, holdPath, holdsQuery, liftHoldBody, nothing, setHoldBody } from '../requests.ts';
import { type Route, route } from '../route.ts';

const diskRefusals: readonly ErrorCode[] = ['STORE_DISK_FULL', 'STORE_DISK_FAILED'];

/** The hold as it is after the command. */
async function perform(ports: WebPorts, command: HoldCommand) {
  const answer = await ports.commandHold(command);
  if (answer.outcome === 'accepted') return answer.hold;
  if (answer.outcome === 'refused')
    throw new AgentError('WEB_COMMAND_REFUSED', { why: answer.why });
  const id = command.verb === 'lift' ? command.hold : command.item;
  throw new AgentError('WEB_HOLD_UNKNOWN', { id });
}

export const holdRoutes = (ports: WebPorts): Route[] => [
  route(
    {
      method: 'GET',
      url: '/api/holds',
      operation: 'listHolds',
      summary: 'Holds, standing and lifted.',
      path: nothing,
      query: holdsQuery,
      answers: { 200: { description: 'Newest first.', schema: holdsSchema } },
      refusals: [],
    },
    ({ query }) => {
      const limit = query.limit ?? defaults.answerRows;
      const wanted: HoldQuery = {
        limit: limit + 1,
        standingOnly: query.standing === 'true',
        ...(query.what === undefined ? {} : { what: query.what }),
        ...(query.item === undefined ? {} : { item: query.item }),
      };
      const holds = ports.holds(wanted);
      return { holds: holds.slice(0, limit), truncated: holds.length > limit };
    },
  ),
  route(
    {
      method: 'POST',
      url: '/api/holds',
      operation: 'setHold',
      summary: 'Put a container, rack, lot or shot on hold.',
      path: nothing,
      query: nothing,
      body: setHoldBody,
      answers: { 201: { description: 'Held, and on disk.', schema: holdSchema } },
      refusals: ['WEB_COMMAND_REFUSED', ...diskRefusals],
    },
    async ({ body, by, reply }) => {
      const hold = await perform(ports, { verb: 'hold', by, ...body });
      reply.code(201);
      return hold;
    },
  ),
  route(
    {
      method: 'POST',
      url: '/api/holds/:id/lift',
      operation: 'liftHold',
      summary: 'Lift a hold and say what becomes of what was held.',
      path: holdPath,
      query: nothing,
      body: liftHoldBody,
      answers: { 200: { description: 'Lifted, and on disk.', schema: holdSchema } },
      refusals: ['WEB_HOLD_UNKNOWN', 'WEB_COMMAND_REFUSED', ...diskRefusals],
    },
    ({ path, body, by }) => perform(ports, { verb: 'lift', hold: path.id, by, ...body }),
  ),
];
