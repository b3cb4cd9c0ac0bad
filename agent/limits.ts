/**
 * Every bound in the agent, in one place (those of people stand in limits/people.ts), with the
 * relations between them asserted.
 * A queue, loop or payload without a line here is a bug. What happens at each limit: docs/limits.md.
 */
import assert from 'node:assert/strict';
import { holdMsDefault, latenessMsDefault, rulesMax, signalsMax } from '#rules/site/bounds.ts';
import { channelLimits } from './limits/channels.ts';
import { peopleLimits } from './limits/people.ts';

export const limits = {
  /** Arrivals are judged at the next point of this grid. */
  beatMs: 20,
  /** An MQTT payload; larger ones are acknowledged, dropped and listed as refused. */
  payloadBytesMax: 65_536,
  /** Depth of a JSON payload; a deeper one is bad, with the cause said. */
  jsonDepthMax: 32,
  /** An MQTT topic; a longer one closes its connection. */
  topicBytesMax: 1_024,
  /** Messages waiting for a commit; further ones are neither kept nor acknowledged, and are sent again. */
  unacknowledgedMax: 20_000,
  /** Messages that wait for one commit together; this many are committed at once. */
  groupCommitMessages: 500,
  /** QoS 0 samples may wait this long for the disk. */
  lazyCommitMs: 1_000,
  /** While the disk refuses, it is asked again this often. */
  commitRetryMs: 1_000,
  /** With nothing to write, the run's mark of life is renewed this often. */
  idleCommitMs: 5_000,
  /** Rows kept in memory while the disk refuses; beyond it those nobody waits for are given up. */
  backlogBytesMax: 32 * 1_024 * 1_024,
  /** Closed occurrences kept in memory; older ones are read from the disk. */
  closedOccurrencesKept: 500,
  /** Transitions kept with one occurrence; the ledger has all of them. */
  occurrenceStepsKept: 200,
  /** Comments kept with one occurrence; the ledger has all of them. */
  occurrenceCommentsKept: 100,
  /** A system clock before this is wrong: it lies before this version was made. */
  earliestPlausibleMs: Date.UTC(2026, 10, 1),
  /** That the system clock was set is told for so long. */
  clockSetToldMs: 86_400_000,
  /** At a start so many of the newest ledger records are looked through for what is still to be told. */
  lookedBackRecordsMax: 50_000,
  /** The store is kept within this, oldest raw samples first; minute summaries stay. */
  spaceBytesDefault: 16 * 1_024 * 1_024 * 1_024,
  /** Occurrences closed within this are at hand without a look at the disk. */
  occurrencesAtHandMs: 7 * 86_400_000,
  /** The engine looks at the clock this often when nothing arrives. */
  lookMs: 100,
  /** The open segment is sealed early beyond this many samples. */
  openSamplesMax: 4_000_000,
  /** A sealing that failed is tried again after this. */
  sealRetryMs: 60_000,
  /** By the samples' clock, silence of this length ends the waiting for later samples. */
  samplesIdleMs: 1_000,
  /** A sample's own time may lie this far ahead of the clock; beyond it the sample is bad. */
  futureToleranceMs: 5_000,
  /** A sample older than this on arrival is kept and not judged, where the site file says nothing. */
  latenessMsDefault,
  /** A sample that carries its own time waits this long for earlier ones, where the site file says nothing. */
  holdMsDefault,
  /** Distinct values one wildcard may take; further ones are counted and make no signal. */
  wildcardInstancesMax: 200,
  /** Topics whose way to their signals is remembered; others are looked up each time. */
  routesMax: 10_000,
  /** Topics nobody bound that are kept by name; the rest are only counted. */
  unboundTopicsMax: 200,
  /** Topics of which messages were refused, kept to be looked at; the one refused longest ago makes room. */
  refusedTopicsMax: 200,
  /** Refused messages of one topic, kept to be looked at. */
  refusedMessagesKept: 5,
  /** A topic whose last message was refused so long ago is no longer told as a matter of health. */
  refusedToldMs: 3_600_000,
  /** Characters of a refused message that are kept. */
  refusedCharsKept: 80,
  /** Topics and causes of refused messages of which the first is logged; further ones are only kept to be looked at. */
  refusedLoggedMax: 1_000,
  /** Recent times of one signal, kept to tell duplicates; the oldest make room. */
  recentTimesMax: 8_192,
  /** A line of a recorded file; a longer one is a bad row. */
  csvLineLengthMax: 262_144,
  /** Share of a recorded file's rows that may be bad, where nobody allowed a number. */
  csvBadRowsShareMax: 0.01,
  /** Signals of one site, derived ones included: a site file with more is refused, and so is a wildcard's new value. */
  signalsMax,
  /** Rules of one site: a site file with more is refused, and so is a wildcard's new value. */
  rulesMax,
  /** A site file or material sheet; a longer one is refused unread. */
  siteFileBytesMax: 1_048_576,
  /** Blocks within blocks, in a site file or material sheet. */
  siteFileDepthMax: 32,
  /** YAML aliases in one file; one with more is refused. */
  siteFileAliasesMax: 100,
  /** Values after aliases are filled in. */
  siteFileValuesMax: 200_000,
  /** Problems printed of one site file; the rest are counted. */
  siteFileProblemsMax: 500,
  /** All signals are sealed together this often. */
  sealEveryMs: 3_600_000,
  /** Kept on the disk to be given up when it is full; without room for it the agent runs and says so. */
  ballastBytes: 16 * 1_024 * 1_024,
  /** The store leaves this much of its disk free, or the share where that is less. */
  freeBytesMin: 256 * 1_024 * 1_024,
  /** The share of the disk that the store leaves free, on a disk too small for `freeBytesMin`. */
  freeShareMin: 0.05,
  /** Sealed inputs deleted in one transaction; 36,000 at once took over 100 ms. */
  deadRowsMax: 500,
  /** Chunks that lose their raw samples in one transaction. */
  droppedBodiesMax: 64,
  /** Free pages given back to the system in one go. */
  vacuumPagesMax: 4_096,
  /** Damaged stretches of sealed samples that are told and kept in sight; further ones show in charts only. */
  damagedChunksMax: 1_000,
  /** Where a store's log stands there and no lock, so long is waited for an agent to make its lock again. */
  lockWaitMs: 2_500,
  /** Settings backups kept, one a day; older ones are deleted. */
  settingsBackupsKept: 7,
  /** Snapshots of the engine kept; older ones are deleted when the next is written. */
  snapshotsKept: 2,
  /** Points of one series in one answer; a request for more is refused. */
  seriesPointsMax: 5_000,
  /** Charts waiting to be read; further ones are refused. */
  seriesWaitingRequestsMax: 64,
  /** Listeners of the live stream; further ones are told to come back later. */
  streamClientsMax: 100,
  /** The body of a request; a larger one is refused unread. */
  requestBytesMax: 65_536,
  /** A signal, occurrence or hold id in a request. */
  idCharsMax: 300,
  /** A reason or comment a person gives. */
  reasonCharsMax: 500,
  /** What stands on hold: a drum, rack, lot or shot. */
  itemCharsMax: 100,
  /** A shelf, whatever a site allows; by priority it is shorter. */
  shelveMinutesMax: 10_080,
  /** Alarms or holds in one answer. */
  answerRowsMax: 5_000,
  /** Open HTTP connections; further ones are closed unanswered. */
  webConnectionsMax: 256,
  /** A request must be complete within this, or it is answered with an error and closed. */
  requestMs: 10_000,
  /** The headers of a request must be there within this, or its connection is closed. */
  requestHeadersMs: 5_000,
  /** A route answers within this, or says that it did not. */
  answerMs: 10_000,
  /** Open requests may finish for this long when the agent stops. */
  webCloseMs: 2_000,
  /** Samples go to the stream at most once a signal in this time. */
  streamSampleEveryMs: 250,
  /** A listener hears at least this often that the stream lives. */
  streamHeartbeatMs: 10_000,
  /** Alarm, hold and health events kept for listeners that come back. */
  streamKeptEventsMax: 2_000,
  /** Bytes of the events kept for listeners that come back; the oldest make room. */
  streamKeptBytesMax: 2 * 1_024 * 1_024,
  /** A listener this far behind gets no samples until it has caught up. */
  streamSampleBacklogBytes: 64 * 1_024,
  /** A listener this far behind is disconnected; it may come back and resume. */
  streamBacklogBytesMax: 4 * 1_024 * 1_024,
  /** All listeners together; beyond it the slowest is disconnected. */
  streamBacklogTotalBytesMax: 32 * 1_024 * 1_024,
  /** The MQTT door. A connection beyond these is refused or slowed, and counted. */
  mqttClientsMax: 1_000,
  /** A connection that has not said CONNECT by then is closed. */
  mqttConnectTimeoutMs: 10_000,
  /** A longer or absent keep-alive is held to this; a client silent for 1.5 times it is closed. */
  mqttKeepAliveMaxS: 3_600,
  /** Packets a client may send before its connection is accepted. */
  mqttEarlyPacketsMax: 1_000,
  /** A client id; a longer one is refused. */
  mqttClientIdBytesMax: 256,
  /** Subscriptions of one connection; further ones are refused in the SUBACK. */
  mqttSubscriptionsMax: 100,
  /** A connection that sends more waits for the next second. */
  mqttMessagesPerSecondMax: 50_000,
  /** Messages of one connection that wait for a commit; it is not read further meanwhile. */
  mqttWithheldMessagesMax: 1_000,
  /** Bytes waiting for one client that does not read; beyond half of it its messages are dropped. */
  mqttUnreadBytesMax: 4 * 1_024 * 1_024,
  /** Topics with a retained message; further ones are passed on and not retained. */
  mqttRetainedMax: 20_000,
  /** Bytes of all retained messages; beyond it a message is passed on and not retained. */
  mqttRetainedBytesMax: 32 * 1_024 * 1_024,
  /** Sessions kept for clients that are away; beyond it the one longest away is forgotten. */
  mqttSessionsMax: 2_000,
  /** Messages kept for one client that is away; later ones are dropped and counted. */
  mqttSessionMessagesMax: 1_000,
  /** Publishes of QoS 2 a connection may leave without PUBREL; more of them close it. */
  mqttUnreleasedMax: 1_000,
  /** Secrets verified at the same time; others wait. */
  mqttVerificationsMax: 1,
  /** Connections that wait for their secret to be verified; further ones are told to try later. */
  mqttVerificationsWaitingMax: 1_000,
  /** A secret; a longer one is refused. */
  mqttSecretBytesMax: 1_024,
  /** Topics that `listen` tells apart; messages of further ones are only counted. */
  listenTopicsMax: 2_000,
  /** What is done with stays in the outbox so long, then only in the ledger. */
  outboxDoneKeptMs: 7 * 86_400_000,
  /** Messages waiting to be delivered; beyond it the least urgent is given up, of those as urgent one to a target that fails, and it is said. */
  outboxWaitingMessagesMax: 2_000,
  /** Messages on their way at the same time. */
  outboxSendingMessagesMax: 16,
  /** A message is tried for so long, then it is given up, and it is said. */
  outboxTryMs: 3 * 86_400_000,
  /** First wait after a try that failed; it doubles up to `outboxRetryMsMax`. */
  outboxRetryMsMin: 5_000,
  /** Longest wait between tries, whatever the far side asks for. */
  outboxRetryMsMax: 15 * 60_000,
  /** One try of a channel that gives no answer; then it counts as failed. */
  outboxTryMsMax: 30_000,
  /** Nobody of a step could be reached for so long: the next step is not waited for. */
  outboxUnreachableMs: 120_000,
  /** Times somebody was told that are kept with one alarm; the ledger has all of them. */
  occurrenceTellingsKept: 100,
  /** An iCalendar file; a longer one is refused unread. */
  rotaFileBytesMax: 1_048_576,
  /** Events of one iCalendar file that are looked at. */
  rotaEventsMax: 5_000,
  /** Occurrences of one repeating event that are worked out. */
  rotaRepeatsMax: 20_000,
  /** A calendar's address must answer whole within this. */
  rotaFetchMs: 10_000,
  /** A rota kept elsewhere is read again this often. */
  rotaReadEveryMs: 15 * 60_000,
  /** Records of the ledger younger than this, before the agent last lived, are never archived. */
  ledgerKeptMs: 24 * 3_600_000,
  /** How often a signed head of the ledger is sent out. */
  checkpointEveryMs: 24 * 3_600_000,
  /** How often the agent says by MQTT that it is alive; three beats missed mean that nobody watches. */
  heartbeatMs: 10_000,
  /** Settings a change of the site file names in the ledger; of further ones their number. */
  siteChangesKept: 500,
  /** One call of own rules may take so long of the processor; their file is switched off beyond it. */
  extensionCallCpuMsMax: 20,
  /** … and so long by the clock, whatever it waits for. */
  extensionCallMsMax: 250,
  /** Calls of own rules that threw or gave what cannot be used, before their file is switched off. */
  extensionFaultsMax: 3,
  /** Own rules that stand still for so long never come back: the process ends and starts without them. */
  extensionStillMs: 5_000,
  /** How soon a running agent notices a device added or removed. */
  mqttDevicesReloadMs: 1_000,
  ...peopleLimits,
  ...channelLimits,
} as const;

assert(limits.beatMs < limits.lazyCommitMs, 'a lazy commit covers whole beats');
assert(
  limits.holdMsDefault < limits.latenessMsDefault,
  'a sample within its hold must never be late',
);
assert(
  limits.streamClientsMax < limits.webConnectionsMax,
  'listeners must never take the last connection from a person',
);
assert(
  limits.streamSampleBacklogBytes < limits.streamBacklogBytesMax,
  'samples give way before a listener is cut off',
);
assert(
  limits.streamKeptBytesMax < limits.streamBacklogBytesMax,
  'a listener that comes back can be sent all that was kept',
);
assert(
  limits.mqttWithheldMessagesMax < limits.unacknowledgedMax,
  'no one connection may fill the queue for the commit',
);
assert(
  limits.sessionIdleMsDefault < limits.sessionAbsoluteMsDefault,
  'a session that nobody uses ends before its last day',
);
assert(limits.provedMs < limits.sessionIdleMsDefault, 'a password given again is no session');
assert(
  limits.certificateRenewMs < limits.certificateMs,
  'a certificate just made is not due to be made anew',
);
assert(
  limits.mqttVerificationsWaitingMax >= limits.mqttClientsMax,
  'every client may reconnect at once after a restart',
);
assert(
  limits.payloadBytesMax * 8 <= limits.mqttUnreadBytesMax,
  'a reader may fall several of the largest messages behind',
);
assert(
  limits.streamBacklogBytesMax < limits.streamBacklogTotalBytesMax,
  'one slow listener must not cost another its place',
);
assert(
  limits.channelAnswerMs < Math.min(limits.outboxTryMsMax, limits.answerMs),
  'a channel says itself why a far side did not answer',
);
