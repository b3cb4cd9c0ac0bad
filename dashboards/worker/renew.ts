/**
 * A browser gave this phone another address for push: the agent is told at once. Where that
 * fails, the page "My phone" tells it when somebody looks there.
 */
import type { SubscriptionChanged } from './scope.ts';

type Ask = (url: string, init: RequestInit) => Promise<Response>;

const path = '/api/push/subscriptions';
const asJson = (method: string, body: unknown): RequestInit => ({
  method,
  headers: { 'content-type': 'application/json' },
  credentials: 'same-origin',
  body: JSON.stringify(body),
});

/** Rejects where the browser gives no new one, or the agent cannot be told. */
export async function renew(
  {
    oldSubscription: old,
    newSubscription,
  }: Pick<SubscriptionChanged, 'oldSubscription' | 'newSubscription'>,
  manager: Pick<PushManager, 'subscribe'>,
  ask: Ask,
): Promise<void> {
  const key = old?.options.applicationServerKey ?? null;
  if (newSubscription === null && key === null)
    throw new Error('push ended here, and nothing says with which key to begin it again');
  const next =
    newSubscription ??
    (await manager.subscribe({ userVisibleOnly: true, applicationServerKey: key }));
  const answer = await ask(path, asJson('POST', next.toJSON()));
  if (!answer.ok) throw new Error(`the agent answers ${answer.status}`);
  if (old !== null && old.endpoint !== next.endpoint)
    await ask(path, asJson('DELETE', { endpoint: old.endpoint }));
}
