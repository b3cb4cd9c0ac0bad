/**
 * The service worker: shows what is pushed, answers from the notification, opens the page, and keeps
 * the page's shell for when there is no agent to ask. It loads nothing but this file.
 */
import type { PushNotice } from '../../agent/web/contract.ts';
import { acknowledge } from './answer.ts';
import { isAnswerable, noticeOf, type ShownNotice, shownNotice, unreadable } from './notice.ts';
import { renew } from './renew.ts';
import type { Pushed, Tapped, WorkerScope } from './scope.ts';
import { Shell, wayOf } from './shell.ts';

const scope = globalThis as unknown as WorkerScope;
const shell = new Shell({ caches, ask: (request, init) => fetch(request, init) });

const show = ({ title, options }: ShownNotice): Promise<void> =>
  scope.registration.showNotification(title, options);

scope.addEventListener('install', (event) => {
  // Without the agent there is no shell to keep; the worker is as good for messages.
  event.waitUntil(shell.fill().catch((error: unknown) => console.warn('the shell', error)));
  event.waitUntil(scope.skipWaiting());
});
scope.addEventListener('activate', (event) => {
  event.waitUntil(Promise.all([shell.clear(), scope.clients.claim()]));
});

scope.addEventListener('fetch', (event) => {
  const { request } = event;
  const way = wayOf(request, scope.location.origin);
  if (way === 'asset') event.respondWith(shell.asset(request));
  if (way === 'shell') event.respondWith(shell.shell(request, (work) => event.waitUntil(work)));
});

scope.addEventListener('push', (event) => event.waitUntil(pushed(event)));
scope.addEventListener('notificationclick', (event) => event.waitUntil(tapped(event)));
scope.addEventListener('pushsubscriptionchange', (event) =>
  event.waitUntil(renew(event, scope.registration.pushManager, (url, init) => fetch(url, init))),
);

function pushed(event: Pushed): Promise<void> {
  let data: unknown = null;
  try {
    data = event.data?.json() ?? null;
  } catch {
    // No JSON: told below like anything else that is no notice.
  }
  const notice = noticeOf(data);
  const language = navigator.language.startsWith('de') ? 'de' : 'en';
  return show(notice === null ? unreadable(language) : shownNotice(notice));
}

async function tapped({ action, notification }: Tapped): Promise<void> {
  const notice = noticeOf(notification.data);
  if (notice !== null && action === 'acknowledge' && isAnswerable(notice)) {
    await show(await acknowledge(notice, (url, init) => fetch(url, init)));
    return;
  }
  notification.close();
  await lookAt(notice);
}

/** In a window that is there already, else in a new one. */
async function lookAt(notice: PushNotice | null): Promise<void> {
  const url = notice?.url ?? '/';
  const [there] = await scope.clients.matchAll({ type: 'window' });
  if (there === undefined) {
    await scope.clients.openWindow(url);
    return;
  }
  there.postMessage({ look: url });
  await there.focus();
}
