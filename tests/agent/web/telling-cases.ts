/** Telling and push, as a script would ask for them and as it should not: for the document's test. */
import { aPhone } from '../notify/open-push.ts';
import type { Sent } from './wire.ts';

const asked = (path: string, body: unknown, method = 'POST'): Sent => ({
  method,
  path,
  headers: { 'content-type': 'application/json' },
  body: JSON.stringify(body),
});

const { p256dh, auth } = aPhone();
const phone = { endpoint: 'https://push.example/one', keys: { p256dh, auth } };
const list = '/api/push/subscriptions';

/** In this order: what is switched on is then tried, and switched off. */
export const tellingCases: readonly (readonly [string, Sent])[] = [
  ['/api/telling', { path: '/api/telling' }],
  ['/api/telling', { path: '/api/telling?station=l%2Fs&hazard=fire&priority=low' }],
  ['/api/telling', { path: '/api/telling?priority=urgent' }],
  ['/api/telling/outbox', { path: '/api/telling/outbox' }],
  ['/api/telling/test', asked('/api/telling/test', {})],
  ['/api/telling/test', asked('/api/telling/test', { person: 'anna' })],
  ['/api/push/key', { path: '/api/push/key' }],
  ['/api/push/test', asked('/api/push/test', {})],
  [list, asked(list, phone)],
  [list, asked(list, { ...phone, expirationTime: null })],
  [list, asked(list, { ...phone, endpoint: 'http://push.example/one' })],
  [list, asked(list, { ...phone, keys: { p256dh: 'x', auth } })],
  [list, asked(list, {})],
  ['/api/push/test', asked('/api/push/test', {})],
  [list, asked(list, { endpoint: phone.endpoint }, 'DELETE')],
  [list, asked(list, { endpoint: phone.endpoint }, 'DELETE')],
  [list, asked(list, {}, 'DELETE')],
];
