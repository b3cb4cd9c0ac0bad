/** The bounds of the door, all handed in. Every one is finite; what happens at each is beside it. */
export interface DoorLimits {
  /** A larger payload is taken as far as shows that it is, and passed on to nobody. */
  readonly payloadBytesMax: number;
  readonly topicBytesMax: number;
  /** Further connections are closed at once. */
  readonly clientsMax: number;
  readonly clientIdBytesMax: number;
  /** A connection that has not said CONNECT by then is closed. */
  readonly connectTimeoutMs: number;
  /** A longer or absent keep-alive is held to this; silence of 1.5 times it closes. */
  readonly keepAliveMaxS: number;
  /** Packets sent before the connection is accepted; more of them close it. */
  readonly earlyPacketsMax: number;
  /** Further subscriptions of a connection are refused in the SUBACK. */
  readonly subscriptionsMax: number;
  /** A connection that sends more waits for the next second. */
  readonly messagesPerSecondMax: number;
  /** Messages of a connection the intake has not done with; it is not read further until it has. */
  readonly withheldMax: number;
  /** Bytes waiting for a client that does not read: at half its messages are dropped, at all it is closed. */
  readonly unreadBytesMax: number;
  /** Further topics, or further bytes, are passed on but not retained. */
  readonly retainedMax: number;
  readonly retainedBytesMax: number;
  /** Sessions kept for clients that are away: the one longest away is forgotten. */
  readonly sessionsMax: number;
  /** Messages kept for a session: later ones are dropped. */
  readonly sessionMessagesMax: number;
  /** Publishes of QoS 2 a connection may leave without PUBREL; more of them close it. */
  readonly exactlyOnceMax: number;
}

/** Fixed part of the largest CONNECT beside its will: names, user and secret. */
const connectBytesMax = 4_096;

/** As much is read of a packet at most, in bytes after the fixed header. */
export const packetBytesMax = (limits: DoorLimits): number =>
  limits.payloadBytesMax + limits.topicBytesMax + connectBytesMax;
