/** The agent's bounds by the names the door has for them. */
import type { DoorLimits } from '#broker/limits.ts';
import { limits } from '../limits.ts';

export const doorLimits: DoorLimits = {
  payloadBytesMax: limits.payloadBytesMax,
  topicBytesMax: limits.topicBytesMax,
  clientsMax: limits.mqttClientsMax,
  clientIdBytesMax: limits.mqttClientIdBytesMax,
  connectTimeoutMs: limits.mqttConnectTimeoutMs,
  keepAliveMaxS: limits.mqttKeepAliveMaxS,
  earlyPacketsMax: limits.mqttEarlyPacketsMax,
  subscriptionsMax: limits.mqttSubscriptionsMax,
  messagesPerSecondMax: limits.mqttMessagesPerSecondMax,
  unreadBytesMax: limits.mqttUnreadBytesMax,
  retainedMax: limits.mqttRetainedMax,
  retainedBytesMax: limits.mqttRetainedBytesMax,
  sessionsMax: limits.mqttSessionsMax,
  sessionMessagesMax: limits.mqttSessionMessagesMax,
  exactlyOnceMax: limits.mqttUnreleasedMax,
  withheldMax: limits.mqttWithheldMessagesMax,
};

export const secretLimits = {
  verificationsMax: limits.mqttVerificationsMax,
  verificationsWaitingMax: limits.mqttVerificationsWaitingMax,
  secretBytesMax: limits.mqttSecretBytesMax,
};
