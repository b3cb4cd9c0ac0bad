/** My phone: push on, off, and a message to try it. Each speaks of the phones of whoever asks. */
import {
  pushDevicesSchema,
  pushEndpointSchema,
  pushKeySchema,
  pushSubscriptionSchema,
  pushTestSchema,
} from '../push-contract.ts';
import type { PushPorts } from '../push-ports.ts';
import { emptyBody, nothing } from '../requests.ts';
import { type Route, route } from '../route.ts';

export const pushRoutes = (push: PushPorts): Route[] => [
  route(
    {
      method: 'GET',
      url: '/api/push/key',
      operation: 'readPushKey',
      summary: 'The key of this agent that a browser asks for before it takes push.',
      path: nothing,
      query: nothing,
      answers: { 200: { description: 'The key.', schema: pushKeySchema } },
      refusals: [],
    },
    ({ by }) => push.key(by),
  ),
  route(
    {
      method: 'POST',
      url: '/api/push/subscriptions',
      operation: 'subscribePush',
      summary: 'Push on for this phone or browser; again the same: renewed.',
      path: nothing,
      query: nothing,
      body: pushSubscriptionSchema,
      answers: { 201: { description: 'On.', schema: pushDevicesSchema } },
      refusals: ['PUSH_SUBSCRIPTION_WRONG', 'PUSH_DEVICES_FULL'],
    },
    ({ body, by, reply }) => {
      const devices = push.subscribe(body, by);
      reply.code(201);
      return devices;
    },
  ),
  route(
    {
      method: 'DELETE',
      url: '/api/push/subscriptions',
      operation: 'unsubscribePush',
      summary: 'Push off for this phone or browser.',
      path: nothing,
      query: nothing,
      body: pushEndpointSchema,
      answers: { 200: { description: 'Off.', schema: pushDevicesSchema } },
      refusals: ['PUSH_DEVICE_UNKNOWN'],
    },
    ({ body: { endpoint }, by }) => push.unsubscribe(endpoint, by),
  ),
  route(
    {
      method: 'POST',
      url: '/api/push/test',
      operation: 'testPush',
      summary: 'A message to the own phones, at once, and what became of it.',
      path: nothing,
      query: nothing,
      body: emptyBody,
      answers: { 200: { description: 'What became of it.', schema: pushTestSchema } },
      refusals: [],
    },
    ({ by }) => push.test(by),
  ),
];
