/**
 * The real service worker: what the agent sends is decrypted with a test key and delivered to it.
 *
 * Stubbed, since a browser without network has no push service: `PushManager.subscribe` and
 * `getSubscription` give a subscription whose address is a local HTTPS endpoint; and since no finger
 * touches a headless browser: `WindowClient.focus`, which asks for one. All else is real: the
 * agent's request, its encryption, the worker, its notifications, its answers.
 */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, BrowserContext, CDPSession, Page, Worker } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import type { PushNotice } from '#agent/web/contract.ts';
import { type FarSide, farSide } from '../agent/notify/far-side.ts';
import { aPhone } from '../agent/notify/open-push.ts';
import { alarms } from '../wire/agent-http.ts';
import { type BenchLine, benchSite, startBenchLine } from './bench-line.ts';
import { launch, open } from './chromium.ts';

const place = mkdtempSync(join(tmpdir(), 'forebond-push-'));
const phone = aPhone();
let far: FarSide;
let line: BenchLine;
let browser: Browser;
let context: BrowserContext;
let page: Page;
let complaints: readonly string[];
let worker: Worker;
let devtools: CDPSession;
let registrationId: string;

beforeAll(async () => {
  far = await farSide('none');
  const authority = join(place, 'authority.pem');
  writeFileSync(authority, far.authority);
  const site = { ...benchSite, telling: { push: { hosts: ['localhost'] } } };
  [line, browser] = await Promise.all([
    startBenchLine(site, { NODE_EXTRA_CA_CERTS: authority }),
    launch(),
  ]);
  await openPhone();
}, 90_000);
afterAll(async () => {
  await browser?.close();
  await line?.stop();
  await far?.close();
  rmSync(place, { recursive: true, force: true });
});

const url = (hash: string): string => `${line.agent.page}/${hash}`;

/** A phone with the page in it, its worker running, and a push service that is the far side. */
async function openPhone(): Promise<void> {
  ({ page, context, complaints } = await open(browser, url('#/'), { size: 'phone' }));
  await context.grantPermissions(['notifications'], { origin: line.agent.page });
  await context.addInitScript(stubSubscription, { endpoint: far.url, ...keysOf(phone) });
  await page.evaluate(() => navigator.serviceWorker.ready);
  devtools = await context.newCDPSession(page);
  const registered = new Promise<string>((found) =>
    devtools.on('ServiceWorker.workerRegistrationUpdated', ({ registrations }) => {
      const [one] = registrations;
      if (one !== undefined) found(one.registrationId);
    }),
  );
  await devtools.send('ServiceWorker.enable');
  registrationId = await registered;
  worker = context.serviceWorkers()[0] ?? (await context.waitForEvent('serviceworker'));
  await worker.evaluate(() => {
    Object.assign((globalThis as unknown as WithClients).WindowClient.prototype, {
      focus(this: unknown) {
        return Promise.resolve(this);
      },
    });
  });
  await page.goto(url('#/phone'));
  await page.reload();
}

interface WithClients {
  WindowClient: { prototype: object };
}
const keysOf = ({ p256dh, auth }: typeof phone) => ({ p256dh, auth });

function stubSubscription(given: { endpoint: string; p256dh: string; auth: string }): void {
  const kept = (): object | null => {
    const key = sessionStorage.getItem('stub.key');
    if (key === null) return null;
    const applicationServerKey = Uint8Array.from(JSON.parse(key) as number[]).buffer;
    const { endpoint, ...keys } = given;
    return {
      endpoint,
      options: { applicationServerKey, userVisibleOnly: true },
      toJSON: () => ({ endpoint, expirationTime: null, keys }),
      unsubscribe: async () => sessionStorage.removeItem('stub.key') === undefined,
    };
  };
  Object.assign(PushManager.prototype, {
    getSubscription: async () => kept(),
    subscribe: async ({ applicationServerKey }: { applicationServerKey: Uint8Array }) => {
      sessionStorage.setItem('stub.key', JSON.stringify([...applicationServerKey]));
      return kept();
    },
  });
}

/** What the push service got last, as the phone reads it. */
const opened = (): string => phone.open(far.taken.at(-1)!.body);
const deliver = (data: string): Promise<unknown> =>
  devtools.send('ServiceWorker.deliverPushMessage', {
    origin: line.agent.page,
    registrationId,
    data,
  });

interface Shown {
  readonly title: string;
  readonly body: string;
  readonly tag: string;
  readonly requireInteraction: boolean;
  readonly silent: boolean;
  readonly actions: readonly string[];
}
const shown = (): Promise<Shown[]> =>
  page.evaluate(async () => {
    const ready = await navigator.serviceWorker.ready;
    return (await ready.getNotifications()).map((each) => {
      const { title, body, tag, requireInteraction, silent } = each;
      const { actions } = each as Notification & { actions: { action: string }[] };
      const plain = { title, body, tag, requireInteraction, silent: silent === true };
      return { ...plain, actions: actions.map(({ action }) => action) };
    });
  });

/** A tap on the notification of a thread, or on one of its buttons. */
const tap = (tag: string, action: string): Promise<void> =>
  worker.evaluate(
    async ([of, which]) => {
      const scope = globalThis as unknown as {
        registration: ServiceWorkerRegistration;
        NotificationEvent: new (name: string, init: object) => Event;
      };
      const [notification] = await scope.registration.getNotifications({ tag: of! });
      const event = new scope.NotificationEvent('notificationclick', {
        notification,
        action: which,
      });
      globalThis.dispatchEvent(event);
    },
    [tag, action],
  );

const floorAlarm = async () =>
  (await alarms(line.agent.page)).filter(({ rule }) => rule.endsWith('floor-hot')).at(0);

/** Every alarm over and answered. */
async function settle(): Promise<void> {
  await line.floor(90);
  await expect
    .poll(
      async () => {
        const alarm = await floorAlarm();
        if (alarm === undefined || alarm.state === 'normal') return true;
        if (/unack/.test(alarm.state))
          await fetch(
            `${line.agent.page}/api/alarms/${encodeURIComponent(alarm.occurrence)}/acknowledge`,
            { method: 'POST' },
          );
        return false;
      },
      { timeout: 15_000 },
    )
    .toBe(true);
}

/** An alarm, sent by the agent, decrypted and delivered; gives its notice. */
async function called(): Promise<PushNotice> {
  await settle();
  const before = far.taken.length;
  await line.floor(118);
  let notice: PushNotice | null = null;
  await expect
    .poll(
      () => {
        for (const { body } of far.taken.slice(before)) {
          const each = JSON.parse(phone.open(body)) as PushNotice;
          if (each.kind === 'alarm') notice = each;
        }
        return notice;
      },
      { timeout: 15_000 },
    )
    .not.toBeNull();
  await deliver(JSON.stringify(notice));
  await expect.poll(async () => (await shown()).map(({ title }) => title)).toContain(notice!.title);
  return notice!;
}

/** One test takes the network away, and the browser says so. */
beforeEach(() => {
  expect(complaints.filter((each) => !each.includes('ERR_INTERNET_DISCONNECTED'))).toEqual([]);
});

test('push goes on by one tap, and a test message shows', async () => {
  await page.getByText('Push is off for this phone.').waitFor();
  const on = page.getByRole('button', { name: 'Push on' });
  expect((await on.boundingBox())!.height).toBeGreaterThanOrEqual(72);
  await on.click();
  await page.getByText('Push is on for this phone.').waitFor();
  await page.getByText('One phone or browser of yours takes push.').waitFor();
  await page.getByRole('button', { name: 'Send me a test message' }).click();
  await page.getByText(/^Sent\./).waitFor();
  await deliver(opened());
  await expect
    .poll(shown)
    .toEqual([
      expect.objectContaining({ tag: 'test', actions: ['look'], requireInteraction: false }),
    ]);
});

test('an alarm shows whole and is acknowledged from the notification', async () => {
  const notice = await called();
  const one = async (): Promise<Shown | undefined> =>
    (await shown()).find(({ tag }) => tag === notice.thread);
  await expect.poll(one).toMatchObject({
    title: notice.title,
    requireInteraction: true,
    silent: false,
    actions: ['acknowledge', 'look'],
  });
  const { body } = (await one())!;
  expect(body).toContain('floor: 118');
  expect(body.indexOf('Do not open the oven to look.')).toBeGreaterThan(0);
  expect(body.indexOf('Do not open')).toBeLessThan(body.indexOf('fire alarm, leave'));
  await tap(notice.thread, 'acknowledge');
  await expect.poll(async () => (await floorAlarm())!.state).toBe('acknowledged');
  await expect.poll(one).toMatchObject({
    title: `Acknowledged · ${notice.title}`,
    silent: true,
    requireInteraction: false,
    actions: ['look'],
  });
});

test('from the notification to acknowledged in two taps', async () => {
  await page.goto(url('#/'));
  const notice = await called();
  let taps = 0;
  await tap(notice.thread, '');
  taps += 1;
  const button = page.getByRole('button', { name: 'Acknowledge' });
  await button.waitFor();
  expect(page.url()).toContain('#/alarm/');
  expect(page.viewportSize()).toEqual({ width: 390, height: 844 });
  const box = (await button.boundingBox())!;
  expect(box.height).toBeGreaterThanOrEqual(72);
  expect(box.y + box.height).toBeLessThanOrEqual(844);
  await button.click();
  taps += 1;
  await expect.poll(async () => (await floorAlarm())!.state).toBe('acknowledged');
  expect(taps).toBe(2);
  expect((await shown()).some(({ tag }) => tag === notice.thread)).toBe(false);
});

test.each(['en-IE', 'de-DE'] as const)(
  'with no page open (%s): a tap opens the alarm, and the next acknowledges it, without scrolling',
  async (language) => {
    await page.goto(url('#/'));
    const notice = await called();
    // What the worker opens where there is no window: a headless browser opens none without a finger.
    const cold = await open(browser, `${line.agent.page}${notice.url}`, { language });
    const action = cold.page.locator('.answer-bar .main-action');
    await action.waitFor();
    const box = (await action.boundingBox())!;
    expect(cold.page.viewportSize()).toEqual({ width: 390, height: 844 });
    expect(box.height).toBeGreaterThanOrEqual(72);
    expect(box.width).toBeGreaterThanOrEqual(390 - 2 * 16);
    expect([box.y >= 0, box.y + box.height <= 844]).toEqual([true, true]);
    expect(await cold.page.evaluate(() => window.scrollY)).toBe(0);
    // Nothing lies over it where a thumb comes down.
    const hit = await action.evaluate(
      (button, [x, y]) => document.elementFromPoint(x!, y!) === button,
      [box.x + box.width / 2, box.y + box.height / 2],
    );
    expect(hit).toBe(true);
    await cold.page.mouse.click(box.x + box.width / 2, box.y + box.height / 2);
    await expect
      .poll(async () => (await floorAlarm())!.state, { timeout: 15_000 })
      .toBe('acknowledged');
    await cold.context.close();
  },
);

test('a highly managed alarm is not acknowledged from the notification, whatever is asked', async () => {
  await page.goto(url('#/'));
  const notice = await called();
  await deliver(JSON.stringify({ ...notice, highly_managed: true }));
  await expect
    .poll(async () => (await shown()).find(({ tag }) => tag === notice.thread)?.actions)
    .toEqual(['look']);
  await tap(notice.thread, 'acknowledge');
  await page.getByRole('button', { name: 'Acknowledge' }).waitFor();
  expect((await floorAlarm())!.state).toBe('unacknowledged');
});

test('without the agent an answer is said not to be sent; the page opens as it was', async () => {
  const notice = await called();
  await context.setOffline(true);
  try {
    await tap(notice.thread, 'acknowledge');
    const titles = async () => (await shown()).map(({ title }) => title);
    await expect.poll(titles).toContain(`Not sent · ${notice.title}`);
    await page.reload({ waitUntil: 'commit' });
    await page.locator('#page > *').first().waitFor();
  } finally {
    await context.setOffline(false);
  }
  expect((await floorAlarm())!.state).toBe('unacknowledged');
});

test('what is no message of the agent shows a notification all the same', async () => {
  await deliver('nonsense');
  await expect
    .poll(async () => (await shown()).map(({ title }) => title))
    .toContain('A message came that cannot be read');
});

test('push goes off by one tap, and the agent sends nothing more', async () => {
  await page.goto(url('#/phone'));
  await page.getByRole('button', { name: 'Push off' }).click();
  await page.getByText('Push is off for this phone.').waitFor();
  const answer = await fetch(`${line.agent.page}/api/push/key`);
  expect(await answer.json()).toMatchObject({ devices: 0 });
});

test('the page can be installed', async () => {
  const manifest = await page.evaluate(async () => {
    const link = document.querySelector<HTMLLinkElement>('link[rel=manifest]')!;
    const found = await fetch(link.href);
    return { type: found.headers.get('content-type'), json: (await found.json()) as unknown };
  });
  expect(manifest.type).toBe('application/manifest+json');
  const { errors, manifest: read } = (await devtools.send('Page.getAppManifest')) as {
    errors: { message: string }[];
    manifest?: unknown;
  };
  expect(errors).toEqual([]);
  expect(read ?? manifest.json).toBeTruthy();
  const { installabilityErrors } = await devtools.send('Page.getInstallabilityErrors');
  // A context of a test is like a private window, which installs nothing; nothing else may be missing.
  expect(installabilityErrors.map(({ errorId }) => errorId)).toEqual(['in-incognito']);
});
