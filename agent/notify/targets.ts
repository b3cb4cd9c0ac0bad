/** By which ways a person is told. */
import type { Target, TellablePerson } from './contract.ts';

/** The phone where they have one, else e-mail; both where it is urgent. */
export function targetsOf(person: TellablePerson, urgent: boolean): Target[] {
  const { id, addresses } = person;
  const { email, push } = addresses;
  const targets: Target[] = [];
  if (push) targets.push({ person: id, channel: 'push', address: id });
  if (email !== null && (urgent || !push))
    targets.push({ person: id, channel: 'email', address: email });
  return targets;
}

export const webhookTarget = (name: string): Target => ({
  person: null,
  channel: 'webhook',
  address: name,
});

/** As keys and rows name it; holds nobody’s address. */
export const targetName = ({ channel, person, address }: Target): string =>
  `${channel}/${person ?? address}`;
