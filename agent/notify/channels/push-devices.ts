/**
 * Phones and browsers that take push, by person: push-devices.json in the data folder.
 *
 * Always true: a device belongs to one person, the one who said so last; what a push service calls
 * dead is taken out; the file is replaced whole, readable by the agent's own account alone. An
 * endpoint is a secret: whoever has it may send to that phone.
 */
import { createECDH } from 'node:crypto';
import { join } from 'node:path';
import { z } from 'zod';
import type { PersonId } from '#rules/input.ts';
import { AgentError } from '../../errors.ts';
import { limits } from '../../limits.ts';
import type { PushSubscriptionSaid } from '../../web/contract.ts';
import { readPrivate, writePrivate } from './secret.ts';

const row = z.strictObject({
  person: z.string(),
  endpoint: z.string(),
  p256dh: z.string(),
  auth: z.string(),
  addedMs: z.number(),
});
const rows = z.array(row);
export type PushDevice = Readonly<z.output<typeof row>>;

export const pushDevicesName = 'push-devices.json';

export class PushDevices {
  private readonly path: string;
  private kept: readonly PushDevice[];

  /** Throws CHANNEL_SECRET_UNUSABLE where the file is there and cannot be read. */
  constructor(folder: string) {
    this.path = join(folder, pushDevicesName);
    this.kept = this.load();
  }

  of(person: PersonId): readonly PushDevice[] {
    return this.kept.filter((device) => device.person === person);
  }

  /** Throws PUSH_SUBSCRIPTION_WRONG or PUSH_DEVICES_FULL. Again the same device: it is renewed. */
  add(person: PersonId, said: PushSubscriptionSaid, nowMs: number): void {
    checkSubscription(said);
    const { endpoint, keys } = said;
    const others = this.kept.filter((device) => device.endpoint !== endpoint);
    const mine = others.filter((device) => device.person === person);
    const toGo = new Set(mine.slice(0, Math.max(0, mine.length + 1 - limits.pushDevicesMax)));
    const staying = others.filter((device) => !toGo.has(device));
    if (staying.length >= limits.pushDevicesTotalMax)
      throw new AgentError('PUSH_DEVICES_FULL', { max: limits.pushDevicesTotalMax });
    const { p256dh, auth } = keys;
    this.write([...staying, { person, endpoint, p256dh, auth, addedMs: nowMs }]);
  }

  /** `person`: only where it is theirs. False where there was none. */
  remove(endpoint: string, person?: PersonId): boolean {
    const goes = (device: PushDevice): boolean =>
      device.endpoint === endpoint && (person === undefined || device.person === person);
    return this.keepAllBut(goes);
  }

  /** All devices of whoever is no more among the people. */
  forgetOthers(people: ReadonlySet<PersonId>): boolean {
    return this.keepAllBut((device) => !people.has(device.person));
  }

  private keepAllBut(goes: (device: PushDevice) => boolean): boolean {
    const staying = this.kept.filter((device) => !goes(device));
    if (staying.length === this.kept.length) return false;
    this.write(staying);
    return true;
  }

  private write(next: readonly PushDevice[]): void {
    writePrivate(this.path, `${JSON.stringify(next, null, 1)}\n`);
    this.kept = next;
  }

  private load(): readonly PushDevice[] {
    const text = readPrivate(this.path, limits.pushDevicesTotalMax * 2_000);
    if (text === null) return [];
    try {
      return rows.parse(JSON.parse(text));
    } catch {
      // The parser's own words would repeat what stands in the file.
      const reason = 'it is not as the agent wrote it';
      throw new AgentError('CHANNEL_SECRET_UNUSABLE', { path: this.path, reason });
    }
  }
}

/** RFC 8291 section 2: a point of P-256 and 16 bytes; RFC 8030: an https address. */
function checkSubscription({ endpoint, keys }: PushSubscriptionSaid): void {
  const wrong = (reason: string) => new AgentError('PUSH_SUBSCRIPTION_WRONG', { reason });
  if (endpoint.length > limits.pushEndpointCharsMax) throw wrong('its address is too long');
  const url = URL.canParse(endpoint) ? new URL(endpoint) : null;
  if (url === null || url.protocol !== 'https:' || url.username !== '')
    throw wrong('its address is no https address');
  if (Buffer.from(keys.auth, 'base64url').length !== 16) throw wrong('its secret is not 16 bytes');
  try {
    const curve = createECDH('prime256v1');
    curve.generateKeys();
    curve.computeSecret(Buffer.from(keys.p256dh, 'base64url'));
  } catch {
    throw wrong('its key is no point of the curve P-256');
  }
}
