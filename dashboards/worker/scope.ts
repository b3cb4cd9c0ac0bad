/**
 * What a service worker has that a page has not, as far as this one uses it. The types of a page and
 * those of a worker cannot be loaded together. Source: W3C Service Workers, Push API, Notifications.
 */
export interface Extendable extends Event {
  waitUntil(done: Promise<unknown>): void;
}

export interface Fetched extends Extendable {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}

export interface Pushed extends Extendable {
  readonly data: { json(): unknown } | null;
}

export interface Tapped extends Extendable {
  /** Empty where the notification itself was tapped. */
  readonly action: string;
  readonly notification: Notification;
}

export interface SubscriptionChanged extends Extendable {
  readonly oldSubscription: PushSubscription | null;
  readonly newSubscription: PushSubscription | null;
}

export interface ShownWindow {
  readonly url: string;
  focus(): Promise<ShownWindow>;
  postMessage(message: unknown): void;
}

/** Of `NotificationOptions`, with what only a worker may ask for. */
export interface NoticeOptions extends NotificationOptions {
  readonly actions?: readonly { readonly action: string; readonly title: string }[];
  readonly renotify?: boolean;
  readonly timestamp?: number;
  readonly vibrate?: readonly number[];
}

interface Events {
  readonly install: Extendable;
  readonly activate: Extendable;
  readonly fetch: Fetched;
  readonly push: Pushed;
  readonly notificationclick: Tapped;
  readonly pushsubscriptionchange: SubscriptionChanged;
}

export interface WorkerScope {
  readonly location: Location;
  readonly registration: ServiceWorkerRegistration;
  readonly clients: {
    claim(): Promise<void>;
    matchAll(options: { type: 'window' }): Promise<readonly ShownWindow[]>;
    openWindow(url: string): Promise<ShownWindow | null>;
  };
  skipWaiting(): Promise<void>;
  addEventListener<Name extends keyof Events>(
    name: Name,
    listen: (event: Events[Name]) => void,
  ): void;
}
