import { Ajv } from 'ajv';
import { describe, expect, test } from 'vitest';
import { limits } from '#agent/limits.ts';
import { waitOf } from '#agent/notify/channels/ask.ts';
import { makeSecret, secretBytes, signatures } from '#agent/notify/channels/signature.ts';
import { type Webhook, WebhookChannel, webhookId } from '#agent/notify/channels/webhook.ts';
import { cloudEvent } from '#agent/notify/channels/webhook-event.ts';
import type { Target } from '#agent/notify/contract.ts';
import { channelContract } from '../channel-contract.ts';
import { type FarSide, farSide } from '../far-side.ts';
import type { Fault } from '../faults.ts';
import { aMessage } from '../messages.ts';

const secret = makeSecret();
const target: Target = { person: null, channel: 'webhook', address: 'shift-board' };
const idle = new AbortController().signal;

const channelTo = (far: FarSide, facts: Partial<Webhook> = {}) =>
  new WebhookChannel({
    webhooks: () =>
      new Map([
        [
          'shift-board',
          { url: far.url, secrets: [secretBytes(secret)!], anyAddress: false, ...facts },
        ],
      ]),
    page: () => 'https://forebond.plant.example',
    nowMs: () => Date.now(),
    authorities: [far.authority],
    answerMs: 1_500,
  });

channelContract('webhook', async (fault: Fault) => {
  const far = await farSide(fault);
  return {
    channel: channelTo(far),
    target,
    taken: () => far.taken.length,
    secrets: [secret, far.url, new URL(far.url).host, 'shift-board'],
    close: far.close,
  };
});

/** Sends to a far side that takes everything; gives what it took. */
async function sent(facts: Partial<Webhook> = {}, times = 1) {
  const far = await farSide('none');
  try {
    const channel = channelTo(far, facts);
    for (let n = 0; n < times; n += 1)
      expect(await channel.send(aMessage(), target, idle)).toEqual({ outcome: 'delivered' });
    return far.taken;
  } finally {
    await far.close();
  }
}

describe('what a webhook gets', () => {
  test('a CloudEvent 1.0 in structured JSON', async () => {
    const [taken] = await sent();
    expect(taken!.method).toBe('POST');
    expect(taken!.headers['content-type']).toBe('application/cloudevents+json; charset=utf-8');
    const event: unknown = JSON.parse(taken!.body.toString());
    // CloudEvents 1.0, section 3 (REQUIRED attributes, their types and the rule for names) and 3.1.1.
    const schema = {
      type: 'object',
      required: ['id', 'source', 'specversion', 'type'],
      propertyNames: { pattern: '^[a-z0-9]{1,20}$' },
      properties: {
        id: { type: 'string', minLength: 1 },
        source: { type: 'string', minLength: 1 },
        specversion: { const: '1.0' },
        type: { type: 'string', minLength: 1 },
        subject: { type: 'string', minLength: 1 },
        time: { type: 'string', pattern: '^\\d{4}-\\d\\d-\\d\\dT\\d\\d:\\d\\d:\\d\\d(\\.\\d+)?Z$' },
        datacontenttype: { const: 'application/json' },
      },
    };
    const validate = new Ajv({ strict: true }).compile(schema);
    expect(validate(event), JSON.stringify(validate.errors)).toBe(true);
    const { key, occurrence, sentence, steps } = aMessage();
    expect(event).toMatchObject({
      id: key,
      subject: occurrence,
      source: 'urn:forebond:demo-works',
      type: 'forebond.telling.alarm',
      time: '2025-11-25T02:06:00.000Z',
      data: { sentence, steps, word: 'WARNING', priority: 'high', highly_managed: false },
    });
    expect(event).toHaveProperty(
      'data.url',
      expect.stringMatching(/^https:\/\/forebond\.plant\.example\/#\/alarm\//),
    );
  });

  test('do-nots and the caution are written before the steps, of a notice too', () => {
    const { data } = cloudEvent(
      aMessage({ word: 'NOTICE', priority: 'low' }),
      'https://page.example',
    );
    const names = Object.keys(data);
    const places = ['do_not', 'caution', 'steps'].map((name) => names.indexOf(name));
    expect(places).toEqual([...places].sort((a, b) => a - b));
  });

  test('signed over what was sent, and its id equal when it is sent again', async () => {
    const both = await sent({}, 2);
    for (const { headers, body } of both) {
      const id = String(headers['webhook-id']);
      const timestampS = Number(headers['webhook-timestamp']);
      expect(Math.abs(Date.now() / 1_000 - timestampS)).toBeLessThan(60);
      expect(headers['webhook-signature']).toBe(
        signatures([secretBytes(secret)!], { id, timestampS, body }),
      );
    }
    expect(both[0]!.headers['webhook-id']).toBe(both[1]!.headers['webhook-id']);
    expect(webhookId('a/1/webhook/x')).not.toBe(webhookId('a/2/webhook/x'));
    expect(webhookId('a.b')).toMatch(/^msg_[\w-]{32}$/);
  });

  test('two signatures while the secret is changed', async () => {
    const newer = secretBytes(makeSecret())!;
    const [taken] = await sent({ secrets: [newer, secretBytes(secret)!] });
    expect(String(taken!.headers['webhook-signature']).split(' ')).toHaveLength(2);
  });
});

test('a webhook that the site file has no more is gone', async () => {
  const channel = channelTo({
    url: 'https://localhost:1/',
    authority: '',
    taken: [],
    close: async () => {},
  });
  const elsewhere = { ...target, address: 'former' };
  expect(await channel.send(aMessage(), elsewhere, idle)).toMatchObject({ outcome: 'gone' });
});

test('without a secret nothing is sent, for nobody could tell it from a forgery', async () => {
  const far = await farSide('none');
  const delivery = await channelTo(far, { secrets: [] }).send(aMessage(), target, idle);
  await far.close();
  expect(delivery).toMatchObject({ outcome: 'later', cause: expect.stringContaining('secret') });
  expect(far.taken).toEqual([]);
});

test('a link-local address is not asked, unless somebody listed its host', async () => {
  const far = {
    url: 'https://[fe80::1]/latest',
    authority: '',
    taken: [],
    close: async () => {},
  };
  expect(await channelTo(far).send(aMessage(), target, idle)).toMatchObject({ outcome: 'refused' });
  // Listed: it is tried, and fails since the address names no interface.
  expect(await channelTo(far, { anyAddress: true }).send(aMessage(), target, idle)).toMatchObject({
    outcome: 'later',
  });
});

test('how long the far side wants to be left alone', () => {
  const now = Date.UTC(2026, 10, 25, 2);
  const rows: readonly (readonly [string | undefined, number | null])[] = [
    [undefined, null],
    ['0', 0],
    ['7', 7_000],
    [' 120 ', 120_000],
    ['99999999999', limits.channelRetryAfterMsMax],
    // RFC 9110 section 5.6.7: an HTTP date.
    ['Wed, 25 Nov 2026 02:00:30 GMT', 30_000],
    ['Wed, 25 Nov 2026 01:00:00 GMT', 0],
    ['soon', null],
    ['', null],
  ];
  for (const [written, ms] of rows) expect(waitOf(written, now), String(written)).toBe(ms);
});
