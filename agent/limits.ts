/**
 * Every bound in the agent, in one place, with the relations between them asserted.
 * A queue, loop or payload without a line here is a bug. What happens at each limit: docs/limits.md.
 */
import assert from 'node:assert/strict';

export const limits = {
  /** Arrivals are judged at the next point of this grid. */
  beatMs: 20,
  /** An MQTT payload; larger ones are refused and counted. */
  payloadBytesMax: 65_536,
  /** Depth of a JSON payload. */
  jsonDepthMax: 32,
  topicBytesMax: 1_024,
  /** Messages waiting for a commit; publishers wait beyond it. */
  unacknowledgedMax: 20_000,
  /** A QoS 1 or 2 message is on disk and acknowledged within this, where the disk allows. */
  groupCommitMs: 10,
  groupCommitMessages: 500,
  /** QoS 0 samples may wait this long for the disk. */
  lazyCommitMs: 1_000,
  /** A sample's own time may lie this far ahead of the clock. */
  futureToleranceMs: 5_000,
  latenessMsDefault: 600_000,
  holdMsDefault: 2_000,
  /** Distinct values one wildcard may take. */
  wildcardInstancesMax: 200,
  signalsMax: 2_000,
  rulesMax: 10_000,
  siteFileBytesMax: 1_048_576,
  sealEveryMs: 3_600_000,
  ballastBytes: 16 * 1_024 * 1_024,
  freeBytesMin: 256 * 1_024 * 1_024,
  seriesPointsMax: 5_000,
  streamClientsMax: 100,
  requestBytesMax: 65_536,
} as const;

assert(limits.groupCommitMs <= limits.beatMs, 'an acknowledgement must not wait for the beat');
assert(limits.beatMs < limits.lazyCommitMs, 'a lazy commit covers whole beats');
assert(
  limits.holdMsDefault < limits.latenessMsDefault,
  'a sample within its hold must never be late',
);
