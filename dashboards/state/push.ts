/**
 * Push on this phone: what the browser says of it, and on, off and tried through the agent.
 *
 * Always true: `on` is said only once both the browser and the agent have it; a subscription made for
 * another agent's key is replaced.
 */
import type { PushDevicesView, PushKeyView, PushTestView } from '../../agent/web/contract.ts';
import { ask, get, post } from './api.ts';
import { theWorker } from './worker.ts';

export type PushState =
  | 'on'
  | 'off'
  | 'blocked'
  | 'install'
  | 'insecure'
  | 'unsupported'
  | 'worker';

export interface PushNow {
  readonly state: PushState;
  /** Phones and browsers of this person that take push; null where nobody asked the agent. */
  readonly devices: number | null;
}

/** The browser's push service gave no address. */
export class NoAddress extends Error {}

const path = '/api/push/subscriptions';

/** Of iOS, where push works only from the home screen (from memory of Safari 16.4's notes). */
const isBareIos = (): boolean =>
  /iPhone|iPad/.test(navigator.userAgent) &&
  !window.matchMedia('(display-mode: standalone)').matches;

async function managerHere(): Promise<PushManager | PushState> {
  const worker = await theWorker();
  if (worker === 'failed') return 'worker';
  if (worker === 'insecure') return 'insecure';
  if (worker === 'unsupported' || !('PushManager' in window))
    return isBareIos() ? 'install' : 'unsupported';
  return worker.pushManager;
}

const bytesOf = (base64url: string): Uint8Array<ArrayBuffer> =>
  Uint8Array.from(atob(base64url.replaceAll('-', '+').replaceAll('_', '/')), (c) =>
    c.charCodeAt(0),
  );

function isForKey({ options }: PushSubscription, key: string): boolean {
  const made = options.applicationServerKey;
  if (made === null) return false;
  const [mine, theirs] = [new Uint8Array(made), bytesOf(key)];
  return mine.length === theirs.length && mine.every((byte, i) => byte === theirs[i]);
}

/** Throws Refused or NoAnswer where the agent cannot say. */
export async function pushNow(): Promise<PushNow> {
  const manager = await managerHere();
  if (typeof manager === 'string') return { state: manager, devices: null };
  if (Notification.permission === 'denied') return { state: 'blocked', devices: null };
  const { key, devices } = await get<PushKeyView>('/api/push/key');
  const made = await manager.getSubscription();
  if (made === null || !isForKey(made, key)) return { state: 'off', devices };
  // Whoever is signed in now is whom this phone is for; told again it is renewed.
  const told = await post<PushDevicesView>(path, made.toJSON());
  return { state: 'on', devices: told.devices };
}

/** Asks the person, the browser, the agent, in this order. Throws NoAddress, Refused or NoAnswer. */
export async function pushOn(): Promise<PushNow> {
  const manager = await managerHere();
  if (typeof manager === 'string') return { state: manager, devices: null };
  if ((await Notification.requestPermission()) !== 'granted')
    return { state: 'blocked', devices: null };
  const { key } = await get<PushKeyView>('/api/push/key');
  const former = await manager.getSubscription();
  if (former !== null && !isForKey(former, key)) await former.unsubscribe();
  const made = await subscribed(manager, key);
  const { devices } = await post<PushDevicesView>(path, made.toJSON());
  return { state: 'on', devices };
}

async function subscribed(manager: PushManager, key: string): Promise<PushSubscription> {
  try {
    return await manager.subscribe({ userVisibleOnly: true, applicationServerKey: bytesOf(key) });
  } catch (error) {
    throw new NoAddress('the browser gave no address', { cause: error });
  }
}

/** The agent first: what it does not have any more is no longer sent to. Throws Refused or NoAnswer. */
export async function pushOff(): Promise<PushNow> {
  const manager = await managerHere();
  if (typeof manager === 'string') return { state: manager, devices: null };
  const made = await manager.getSubscription();
  if (made === null) return pushNow();
  const { devices } = await ask<PushDevicesView>('DELETE', path, { endpoint: made.endpoint });
  await made.unsubscribe();
  return { state: 'off', devices };
}

/** Throws Refused or NoAnswer. */
export const pushTest = (): Promise<PushTestView> => post<PushTestView>('/api/push/test');
