/** What the web part needs to know of phones that take push. agent/compose.ts hands it in. */
import type { PersonId } from '#rules/input.ts';
import type {
  PushDevicesView,
  PushKeyView,
  PushSubscriptionSaid,
  PushTestView,
} from './push-contract.ts';

/** Everything is of whoever asks; nobody sees another's phones. */
export interface PushPorts {
  key(by: PersonId): PushKeyView;
  /** Throws PUSH_SUBSCRIPTION_WRONG or PUSH_DEVICES_FULL. */
  subscribe(said: PushSubscriptionSaid, by: PersonId): PushDevicesView;
  /** Throws PUSH_DEVICE_UNKNOWN. */
  unsubscribe(endpoint: string, by: PersonId): PushDevicesView;
  /** A message to their own phones, at once. */
  test(by: PersonId): Promise<PushTestView>;
}
