/** Bounds of the ways a message reaches somebody; agent/limits.ts has them all. */
import { webhooksMax } from '#rules/site/bounds.ts';

export const channelLimits = {
  /** The far side of a channel answers whole within this, or the try counts as failed. */
  channelAnswerMs: 8_000,
  /** Of what the far side answers so much is read; then its connection is closed. */
  channelAnswerBytesMax: 16_384,
  /** A far side that asks to be left alone for longer is taken at this. */
  channelRetryAfterMsMax: 24 * 3_600_000,
  /** The text of a push (RFC 8291: a record of 4,096 bytes less header, tag and delimiter); longer ones are cut, consequence first. */
  pushTextBytesMax: 3_993,
  /** A push service keeps a message for a phone that is off at most so long, in seconds. */
  pushKeptSMax: 28 * 86_400,
  /** Phones and browsers of one person that take push; the one added longest ago makes room. */
  pushDevicesMax: 10,
  /** Phones and browsers of all people together; a further one is refused. */
  pushDevicesTotalMax: 2_000,
  /** The address a push service gave a phone; a longer one is refused. */
  pushEndpointCharsMax: 1_000,
  /** One text of an e-mail or webhook; a longer one is cut. */
  channelTextCharsMax: 2_000,
  /** Webhooks of one site; a site file with more is refused. */
  webhooksMax,
  /** How soon a secret that was changed in its file is used. */
  secretLookMs: 60_000,
  /** A file with a secret; a longer one is refused unread. */
  secretFileBytesMax: 4_096,
} as const;
