/** GET /api/stream: the live stream as server-sent events. */
import type { Caller } from '../../people/contract.ts';
import { nothing } from '../requests.ts';
import { type Route, route } from '../route.ts';
import type { Stream } from '../stream.ts';

export const streamRoutes = (
  stream: Stream,
  isIn: (caller: Caller | null) => boolean = () => true,
): Route[] => [
  route(
    {
      method: 'GET',
      url: '/api/stream',
      operation: 'listen',
      summary: 'Server-sent events: sample, alarm, hold, health, reset.',
      description:
        'Connect first, then read /api/alarms: nothing falls in between. The first event is `health`. ' +
        'Alarm, hold and health events come at once, samples at most four times a second a signal, the ' +
        'latest winning. Reconnect with `Last-Event-ID` to get what was missed; `reset` says that it ' +
        'is not kept any more and everything is to be read again. A comment comes every 10 s. ' +
        'The data of each event is described by StreamEvent in the components.',
      path: nothing,
      query: nothing,
      answers: {
        200: { description: 'Events, until you leave.', contentType: 'text/event-stream' },
      },
      refusals: ['WEB_STREAM_FULL', 'WEB_STREAM_ONLY_EVENTS'],
      stream: true,
    },
    ({ reply, caller }) => stream.attach(reply, () => isIn(caller)),
  ),
];
