/**
 * The service worker from the page's side: started once the page stands, listened to when it wants
 * something shown.
 */
export type WorkerStart = ServiceWorkerRegistration | 'insecure' | 'unsupported' | 'failed';

let started: Promise<WorkerStart> | null = null;

/** The worker, or why there is none. Asked again, it is the same answer. */
export function theWorker(): Promise<WorkerStart> {
  started ??= start();
  return started;
}

async function start(): Promise<WorkerStart> {
  if (!window.isSecureContext) return 'insecure';
  if (!('serviceWorker' in navigator)) return 'unsupported';
  try {
    await navigator.serviceWorker.register('/worker.js', { updateViaCache: 'none' });
    return await navigator.serviceWorker.ready;
  } catch (error) {
    console.warn('the service worker did not start', error);
    return 'failed';
  }
}

/** Goes where a tapped notification leads. */
function lookAt(event: MessageEvent<unknown>): void {
  const { data } = event;
  const url = typeof data === 'object' && data !== null ? Reflect.get(data, 'look') : undefined;
  if (typeof url === 'string' && url.startsWith('/#')) location.hash = url.slice(1);
}

/** After the page has loaded, so that it takes nothing from the first look. */
export function keepWorker(): void {
  if ('serviceWorker' in navigator) navigator.serviceWorker.addEventListener('message', lookAt);
  const begin = (): void => void theWorker();
  if (document.readyState === 'complete') begin();
  else window.addEventListener('load', begin, { once: true });
}
