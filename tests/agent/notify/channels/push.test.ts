import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { PushChannel, together, topicOf } from '#agent/notify/channels/push.ts';
import { PushDevices } from '#agent/notify/channels/push-devices.ts';
import { pushKeys } from '#agent/notify/channels/push-keys.ts';
import type { Delivery, Message, Target } from '#agent/notify/contract.ts';
import type { PushNotice } from '#agent/web/contract.ts';
import { channelContract } from '../channel-contract.ts';
import { type FarSide, farSide } from '../far-side.ts';
import type { Fault } from '../faults.ts';
import { aMessage } from '../messages.ts';
import { aPhone, type TestPhone, vapidOf } from '../open-push.ts';

const folder = mkdtempSync(join(tmpdir(), 'forebond-push-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const target: Target = { person: 'p-1', channel: 'push', address: 'p-1' };
const idle = new AbortController().signal;
const keys = pushKeys(folder);
const contact = 'mailto:alarms@plant.example';

const subscribed = (phone: TestPhone, endpoint: string) => ({
  endpoint,
  keys: { p256dh: phone.p256dh, auth: phone.auth },
});

/** A person whose phones have the given endpoints. */
function world(far: FarSide, endpoints: readonly string[] = [far.url], nowMs = () => Date.now()) {
  const devices = new PushDevices(mkdtempSync(join(folder, 'devices-')));
  const phones = endpoints.map((endpoint) => {
    const phone = aPhone();
    devices.add('p-1', subscribed(phone, endpoint), 0);
    return phone;
  });
  const channel = new PushChannel({
    keys: () => keys,
    devices,
    contact: () => contact,
    plantHosts: () => new Set(['localhost', 'nobody.invalid']),
    nowMs,
    authorities: [far.authority],
    answerMs: 1_500,
  });
  const send = (facts: Partial<Message> = {}) => channel.send(aMessage(facts), target, idle);
  return { devices, phones, channel, send };
}

channelContract('push', async (fault: Fault) => {
  const far = await farSide(fault);
  const { channel, phones } = world(far);
  return {
    channel,
    target,
    taken: () => far.taken.length,
    secrets: [far.url, new URL(far.url).host, phones[0]!.auth, keys.privateKey],
    close: far.close,
  };
});

const within = async (fault: Fault, use: (far: FarSide) => Promise<void>): Promise<void> => {
  const far = await farSide(fault);
  try {
    await use(far);
  } finally {
    await far.close();
  }
};

// RFC 8291 section 5 and appendix A.
const rfc8291 = {
  privateKey: 'q1dXpw3UpT5VOmu_cf_v6ih07Aems3njxI-JWgLcM94',
  publicKey:
    'BCVxsr7N_eNgVRqvHtD0zTZsEc6-VV-JvLexhqUzORcxaOzi6-AYWXvTBHm4bjyPjs7Vd8pZGH6SRpkNtoIAiw4',
  auth: 'BTBZMqHH6r4Tts7J_aSIgg',
  body: 'DGv6ra1nlYgDCS1FRnbzlwAAEABBBP4z9KsN6nGRTbVYI_c7VJSPQTBtkgcy27mlmlMoZIIgDll6e3vCYLocInmYWAmS6TlzAC8wEqKK6PBru3jl7A_yl95bQpu6cVPTpK4Mqgkf1CXztLVBSt2Ks3oZwbuwXPXLWyouBWLVWGNWQexSgSxsj_Qulcy4a-fN',
  text: 'When I grow up, I want to be a watermelon',
};

test('the phone of these tests opens the example of RFC 8291', () => {
  const phone = aPhone(rfc8291.privateKey, rfc8291.auth);
  expect(phone.p256dh).toBe(rfc8291.publicKey);
  const body = Buffer.from(rfc8291.body, 'base64url');
  expect(phone.open(body)).toBe(rfc8291.text);
  body[100]! ^= 1;
  expect(() => phone.open(body)).toThrow();
});

describe('what the push service gets', () => {
  test('a body that only the phone opens, complete in itself', () =>
    within('none', async (far) => {
      const { phones, send } = world(far);
      expect(await send()).toEqual({ outcome: 'delivered' });
      const [taken] = far.taken;
      expect(taken!.headers['content-encoding']).toBe('aes128gcm');
      expect(taken!.body.length).toBeLessThanOrEqual(4_096);
      const notice = JSON.parse(phones[0]!.open(taken!.body)) as PushNotice;
      const { site: _, usefulUntil: __, highlyManaged, doNot, limitText, ...same } = aMessage();
      expect(notice).toEqual({
        ...same,
        highly_managed: highlyManaged,
        do_not: doNot,
        limit: limitText,
      });
      expect(() => aPhone().open(taken!.body)).toThrow();
    }));

  test('the longest text still fits one record', () =>
    within('none', async (far) => {
      const { phones, send } = world(far);
      const long = '"ä€𝄞'.repeat(3_000);
      await send({ sentence: long, steps: [long, long, long], caution: long });
      const [taken] = far.taken;
      expect(taken!.body.length).toBeLessThanOrEqual(4_096);
      expect(JSON.parse(phones[0]!.open(taken!.body))).toMatchObject({ title: aMessage().title });
    }));

  test('signed by the agent for this push service (RFC 8292)', () =>
    within('none', async (far) => {
      await world(far).send();
      const { claims, key } = vapidOf(String(far.taken[0]!.headers.authorization));
      expect(key).toBe(keys.publicKey);
      expect(claims.aud).toBe(new URL(far.url).origin);
      expect(claims.sub).toBe(contact);
      const leftS = claims.exp - Date.now() / 1_000;
      expect(leftS).toBeGreaterThan(60);
      expect(leftS).toBeLessThanOrEqual(86_400);
    }));

  // RFC 8030: 5.2 TTL, 5.3 Urgency, 5.4 Topic.
  test('how long it keeps, how urgent it is, and what it takes the place of', () =>
    within('none', async (far) => {
      const { send } = world(far, [far.url], () => 1_000_000);
      const rows: readonly (readonly [Partial<Message>, ttl: string, urgency: string])[] = [
        [{ usefulUntil: 1_090_500 }, '91', 'high'],
        [{ usefulUntil: 999_000 }, '0', 'high'],
        [{ usefulUntil: 1e13 }, '2419200', 'high'],
        [{ usefulUntil: 1_060_000, priority: 'medium' }, '60', 'high'],
        [{ usefulUntil: 1_060_000, priority: 'low' }, '60', 'normal'],
        [{ usefulUntil: 1_060_000, kind: 'over', silent: true }, '60', 'low'],
      ];
      for (const [facts, ttl, urgency] of rows) {
        await send(facts);
        const { headers } = far.taken.at(-1)!;
        expect([headers.ttl, headers.urgency]).toEqual([ttl, urgency]);
        expect(headers.topic).toBe(topicOf(aMessage().thread));
        expect(headers.topic).toMatch(/^[\w-]{1,32}$/);
      }
      expect(topicOf('a@1')).not.toBe(topicOf('a@2'));
    }));
});

describe('the phones of one person', () => {
  test('each is sent to', () =>
    within('none', async (far) => {
      const { send, phones } = world(far, [`${far.url}/1`, `${far.url}/2`]);
      expect(await send()).toEqual({ outcome: 'delivered' });
      expect(far.taken.map(({ path }) => path).sort()).toEqual(['/there/1', '/there/2']);
      for (const { path, body } of far.taken)
        expect(phones[Number(path.at(-1)) - 1]!.open(body)).toContain('Oven 1');
    }));

  test('one that its push service calls dead is taken out; the others are told', () =>
    within('410', (dead) =>
      within('none', async (far) => {
        const { channel, devices } = world(far, [far.url]);
        devices.add('p-1', subscribed(aPhone(), dead.url), 0);
        expect(devices.of('p-1')).toHaveLength(2);
        expect(await channel.send(aMessage(), target, idle)).toEqual({ outcome: 'delivered' });
        expect(devices.of('p-1').map(({ endpoint }) => endpoint)).toEqual([far.url]);
      }),
    ));

  test('the last dead one leaves nobody to send to', () =>
    within('404', async (far) => {
      const { devices, send } = world(far);
      expect(await send()).toMatchObject({ outcome: 'gone' });
      expect(devices.of('p-1')).toEqual([]);
      expect(await send()).toEqual({
        outcome: 'gone',
        cause: 'No phone of this person takes push.',
      });
    }));

  test('a push service inside the plant is asked only where somebody listed it', async () => {
    const devices = new PushDevices(mkdtempSync(join(folder, 'devices-')));
    devices.add('p-1', subscribed(aPhone(), 'https://127.0.0.1:9/x'), 0);
    const channel = new PushChannel({
      keys: () => keys,
      devices,
      contact: () => contact,
      plantHosts: () => new Set(),
      nowMs: () => 0,
    });
    expect(await channel.send(aMessage(), target, idle)).toMatchObject({ outcome: 'refused' });
    expect(devices.of('p-1')).toHaveLength(1);
  });

  test('what several phones come to', () => {
    const delivered: Delivery = { outcome: 'delivered' };
    const gone: Delivery = { outcome: 'gone', cause: 'a' };
    const refused: Delivery = { outcome: 'refused', cause: 'b' };
    const later = (afterMs: number | null): Delivery => ({ outcome: 'later', afterMs, cause: 'c' });
    expect(together([gone, later(5), delivered])).toBe(delivered);
    expect(together([refused, later(9), later(5), gone])).toEqual(later(5));
    expect(together([later(9), later(null)])).toEqual(later(null));
    expect(together([gone, refused])).toBe(refused);
    expect(together([gone])).toBe(gone);
    expect(together([])).toMatchObject({ outcome: 'gone' });
  });
});
