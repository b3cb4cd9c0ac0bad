import { describe, expect, test, vi } from 'vitest';
import { pushText } from '#agent/notify/channels/push-text.ts';
import type { Message } from '#agent/notify/contract.ts';
import type { PushNotice } from '#agent/web/contract.ts';
import { workerWords } from '../../dashboards/text/worker-words.ts';
import { acknowledge } from '../../dashboards/worker/answer.ts';
import { isAnswerable, noticeOf, shownNotice, unreadable } from '../../dashboards/worker/notice.ts';
import { renew } from '../../dashboards/worker/renew.ts';
import { aMessage } from '../agent/notify/messages.ts';

/** As the agent sends it. */
const notice = (facts: Partial<Message> = {}): PushNotice =>
  noticeOf(JSON.parse(pushText(aMessage(facts)).toString()))!;
const actionsOf = (facts: Partial<Message>) =>
  shownNotice(notice(facts)).options.actions?.map(({ action }) => action);

describe('a push as a notification', () => {
  test('says all of it, do-nots before the steps', () => {
    const { title, options } = shownNotice(notice());
    const message = aMessage();
    expect(title).toBe(message.title);
    expect(options.body!.split('\n')).toEqual([
      message.sentence,
      'Do not go near the oven door.',
      message.caution,
      ...message.steps.map((step, i) => `${i + 1} ${step}`),
    ]);
    expect(options).toMatchObject({ tag: message.thread, timestamp: message.at, lang: 'en' });
  });

  test.each(['DANGER', 'WARNING', 'CAUTION', 'NOTICE'] as const)(
    'of a %s too the caution stands above the steps, and is kept where a text must be cut',
    (word) => {
      for (const facts of [{}, { steps: ['a'.repeat(3_000)] }]) {
        const lines = shownNotice(notice({ word, priority: 'low', ...facts })).options.body!.split(
          '\n',
        );
        const at = lines.indexOf(aMessage().caution);
        expect(at).toBeGreaterThan(0);
        expect(at).toBeLessThan(lines.findIndex((line) => line.startsWith('1 ')));
      }
    },
  );

  test('high priority stays and buzzes; the rest comes and goes; what is over makes no sound', () => {
    const row = (facts: Partial<Message>) => {
      const { requireInteraction, silent, renotify, vibrate } = shownNotice(notice(facts)).options;
      return [requireInteraction, silent, renotify, vibrate !== undefined];
    };
    expect(row({ priority: 'high' })).toEqual([true, false, true, true]);
    expect(row({ priority: 'medium' })).toEqual([false, false, true, false]);
    expect(row({ priority: 'high', silent: true, kind: 'over' })).toEqual([
      false,
      true,
      false,
      false,
    ]);
  });

  test('can be acknowledged where it stands, unless it is highly managed or no one alarm', () => {
    expect(actionsOf({})).toEqual(['acknowledge', 'look']);
    expect(actionsOf({ kind: 'again' })).toEqual(['acknowledge', 'look']);
    expect(actionsOf({ highlyManaged: true })).toEqual(['look']);
    for (const kind of ['over', 'answered', 'flood', 'test', 'digest'] as const)
      expect(actionsOf({ kind }), kind).toEqual(['look']);
    expect(isAnswerable(notice({ occurrence: null }))).toBe(false);
  });

  test('in the language of the person', () => {
    const { options } = shownNotice(notice({ language: 'de' }));
    expect(options.actions![0]!.title).toBe('Quittieren');
    expect(options.lang).toBe('de');
  });

  test('what is no notice of this agent is none', () => {
    const good = { ...notice() };
    expect(noticeOf(good)).not.toBeNull();
    const wrong: unknown[] = [null, 7, 'x', [], {}, { ...good, title: 1 }, { ...good, steps: 'x' }];
    for (const url of ['https://elsewhere.example/', '//elsewhere.example/', '/\\elsewhere', 'x'])
      wrong.push({ ...good, url });
    for (const each of wrong) expect(noticeOf(each), JSON.stringify(each)).toBeNull();
    expect(unreadable('de').title).toBe(workerWords.de.unreadable);
  });

  test('both languages say everything', () => {
    expect(Object.keys(workerWords.de)).toEqual(Object.keys(workerWords.en));
  });
});

describe('an acknowledgement from the notification', () => {
  const answers = (status: number, body: object | null = null) =>
    vi.fn(async (_url: string, _init: RequestInit) =>
      Response.json(body, {
        status,
        headers: { 'content-type': body === null ? 'text/plain' : 'application/problem+json' },
      }),
    );

  test('goes to its occurrence, and is said to be there only once the agent confirmed it', async () => {
    const ask = answers(200);
    const shown = await acknowledge(notice(), ask);
    const [url, init] = ask.mock.calls[0]!;
    expect(url).toBe(`/api/alarms/${encodeURIComponent(aMessage().occurrence!)}/acknowledge`);
    expect(init).toMatchObject({ method: 'POST', credentials: 'same-origin', redirect: 'error' });
    expect(shown.title).toBe(`Acknowledged · ${aMessage().title}`);
    expect(shown.options.body).toContain('This stops nothing');
    expect(shown.options).toMatchObject({
      tag: aMessage().thread,
      silent: true,
      requireInteraction: false,
    });
    expect(shown.options.actions!.map(({ action }) => action)).toEqual(['look']);
  });

  test('without an answer it is not sent, stays, and can be tried again', async () => {
    const rows = [
      vi.fn(async () => Promise.reject(new TypeError('no network'))),
      answers(503),
      vi.fn(
        (_: string, { signal }: RequestInit) =>
          new Promise<Response>((_, failed) =>
            signal!.addEventListener('abort', () => failed(signal!.reason)),
          ),
      ),
    ];
    for (const ask of rows) {
      const shown = await acknowledge(notice({ priority: 'low' }), ask, 20);
      expect(shown.title).toBe(`Not sent · ${aMessage().title}`);
      expect(shown.options.body).toContain('try again');
      expect(shown.options.requireInteraction).toBe(true);
      expect(shown.options.actions![0]!.action).toBe('acknowledge');
    }
  });

  test('a refusal is said in the agent’s words; without a session the page is needed', async () => {
    const detail = 'The alarm is out of service.';
    const refused = await acknowledge(notice(), answers(409, { detail }));
    expect(refused.title).toBe(`Not acknowledged · ${aMessage().title}`);
    expect(refused.options.body).toContain(detail);
    const unknown = await acknowledge(notice(), answers(401, { detail: 'x' }));
    expect(unknown.options.body).toContain('sign in');
  });
});

describe('another address of the same phone', () => {
  const subscription = (endpoint: string): PushSubscription =>
    ({
      endpoint,
      options: { applicationServerKey: new ArrayBuffer(65), userVisibleOnly: true },
      toJSON: () => ({ endpoint, keys: { p256dh: 'a', auth: 'b' } }),
    }) as unknown as PushSubscription;
  const asked = () => {
    const calls: [string, string, string][] = [];
    const ask = async (url: string, { method, body }: RequestInit) => {
      calls.push([method!, url, JSON.parse(String(body)).endpoint]);
      return new Response(null, { status: 201 });
    };
    return { calls, ask };
  };
  const path = '/api/push/subscriptions';

  test('is told to the agent, and the one before taken out', async () => {
    const { calls, ask } = asked();
    const subscribe = vi.fn(async () => subscription('https://p.example/2'));
    const oldSubscription = subscription('https://p.example/1');
    await renew({ oldSubscription, newSubscription: null }, { subscribe }, ask);
    expect(subscribe).toHaveBeenCalledOnce();
    expect(calls).toEqual([
      ['POST', path, 'https://p.example/2'],
      ['DELETE', path, 'https://p.example/1'],
    ]);
  });

  test('the browser’s own new one is taken as it is', async () => {
    const { calls, ask } = asked();
    const subscribe = vi.fn();
    const newSubscription = subscription('https://p.example/3');
    await renew({ oldSubscription: null, newSubscription }, { subscribe }, ask);
    expect(subscribe).not.toHaveBeenCalled();
    expect(calls).toEqual([['POST', path, 'https://p.example/3']]);
  });

  test('what cannot be told is a failure', async () => {
    const newSubscription = subscription('https://p.example/3');
    const refuse = async () => new Response(null, { status: 401 });
    const manager = { subscribe: vi.fn() };
    await expect(
      renew({ oldSubscription: null, newSubscription }, manager, refuse),
    ).rejects.toThrow('401');
    const nothing = { oldSubscription: null, newSubscription: null };
    await expect(renew(nothing, manager, refuse)).rejects.toThrow('which key');
  });
});
