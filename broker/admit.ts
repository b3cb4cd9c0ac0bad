/**
 * Judges a CONNECT: what MQTT 3.1.1 forbids and the broker library lets pass, then user and secret,
 * then the will against the access table.
 *
 * Always true: no connection has a row that was not its device's at the moment it was let in.
 */
import type { ConnectPacket } from 'aedes';
import { type AccessRow, anonymousRow, mayPublish } from './access.ts';
import type { RefusalCause } from './counters.ts';
import type { DeviceSource } from './devices.ts';
import type { DoorLimits } from './limits.ts';

/** Return codes of CONNACK, MQTT 3.1.1 table 3.1. */
const returnCodes = {
  'client-id': 2,
  'client-id-taken': 2,
  busy: 3,
  secret: 4,
  'no-devices': 5,
  will: 5,
} as const satisfies Partial<Record<RefusalCause, number>>;

export type Refused = keyof typeof returnCodes;
export const returnCodeOf = (why: Refused): 2 | 3 | 4 | 5 => returnCodes[why];

/** A CONNECT that speaks another protocol is told its level is unacceptable, or closed if it is malformed. */
export function protocolFault(packet: ConnectPacket): 'not-mqtt-3-1-1' | 'protocol' | null {
  const { protocolId, protocolVersion, username, password, will } = packet;
  // Set by the parser for a bridge's level, 128 above the protocol's; its types leave it out.
  const bridge = 'bridgeMode' in packet && packet.bridgeMode === true;
  // [MQTT-3.1.2-1], [MQTT-3.1.2-2]
  if (protocolId !== 'MQTT' || protocolVersion !== 4 || bridge) return 'not-mqtt-3-1-1';
  // [MQTT-3.1.2-22]
  if (password !== undefined && username === undefined) return 'protocol';
  // [MQTT-3.1.2-14]
  if (will !== undefined && Number(will.qos) > 2) return 'protocol';
  return null;
}

/** [MQTT-3.1.3-8] and our bound: what is wrong with the client id, or null. */
export function clientIdFault(packet: ConnectPacket, bytesMax: number): 'client-id' | null {
  const { clientId, clean } = packet;
  if (clientId === '') return clean === false ? 'client-id' : null;
  if (Buffer.byteLength(clientId) > bytesMax) return 'client-id';
  return clientId.includes('\u0000') || clientId.includes('\uFFFD') ? 'client-id' : null;
}

/** The row of a user who has shown their secret, or why there is none. */
export async function rowOf(
  devices: DeviceSource,
  loopback: boolean,
  user: string | undefined,
  secret: Uint8Array | undefined,
): Promise<AccessRow | 'secret' | 'busy' | 'no-devices'> {
  if (devices.count() === 0) return loopback ? anonymousRow : 'no-devices';
  if (user === undefined || secret === undefined) return 'secret';
  const before = devices.find(user);
  const verdict = await devices.check(user, secret);
  if (verdict === 'busy') return 'busy';
  const device = devices.find(user);
  // Removed or given another secret while this one was being verified.
  if (verdict === 'wrong' || device === null || device.hash !== before?.hash) return 'secret';
  return device;
}

/** May this row leave this will? */
export function willAllowed(
  row: AccessRow,
  will: NonNullable<ConnectPacket['will']>,
  limits: DoorLimits,
): boolean {
  return (
    will.payload.length <= limits.payloadBytesMax &&
    mayPublish(row, will.topic, limits.topicBytesMax).allow
  );
}
