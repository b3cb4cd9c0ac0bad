/** Why messages are refused, in words for people: what was wrong, and what to look at first. */
import type { RefusalCause, RefusedMessage, RefusedTopic } from '../intake/refused.ts';
import { limits } from '../limits.ts';
import type { RefusedTopicView } from '../web/refused-contract.ts';

type Words = readonly [why: string, fix: string];

const words: Readonly<Partial<Record<RefusalCause, Words>>> = {
  'instance-name': [
    'The level of the topic that names the instance holds no letter or digit, or too many.',
    'Give the sender a name of letters and digits.',
  ],
  'instance-collision': [
    'Another topic already feeds the signal that this one would.',
    'Give the two senders names that differ in more than capitals and signs.',
  ],
  'instance-refused': [
    'The wildcard has as many signals as it may have.',
    'Take senders that are gone out of the topic, or bind them one by one.',
  ],
  'too-large': [
    `The message is more than ${limits.payloadBytesMax / 1_024} KiB; not read further.`,
    'Have the sender send less at once.',
  ],
  'not-utf8': [
    'The message is no text in UTF-8.',
    'Have the sender send a number as text, or JSON.',
  ],
  'too-deep': [
    'The JSON has more levels than the agent reads.',
    'Have the sender send it flatter.',
  ],
  'not-json': [
    'The message is no JSON, and the site file promises it.',
    'Compare `payload` in the site file with how the message begins.',
  ],
  'not-a-number': [
    'Where the value should stand there is no number.',
    'Compare `payload` in the site file with how the message begins.',
  ],
  'no-value': [
    'The message has nothing at the place of the value.',
    'Compare `value` in the site file with how the message begins.',
  ],
  'not-finite': [
    'The sender says that it has no number: NaN or infinity.',
    'Look at the sensor and its wire; many senders say so of a broken one.',
  ],
  'no-time': [
    'The message has nothing at the place of the time.',
    'Compare `time` in the site file with how the message begins, or take it out.',
  ],
  'time-unreadable': [
    'The time of the message cannot be read.',
    'Give `time_format` in the site file, or take `time` out.',
  ],
  'no-unit': [
    'The message has no text at the place of the unit.',
    'Compare `unit` of the payload in the site file with how the message begins.',
  ],
  'wrong-unit': [
    'The message names a unit of another quantity than the site file.',
    'Compare `unit` in the site file with how the message begins.',
  ],
  'out-of-range': [
    'The value lies outside what this sensor can send.',
    'Look at the sensor and its wire, then at `unit` and `range` in the site file.',
  ],
  'no-item': [
    'The message does not say which item: nothing stands where it should.',
    'Compare `item` of the payload in the site file with how the message begins.',
  ],
  'item-unreadable': [
    'What stands at the place of the item is no item: text of one line, or a number, not too long.',
    'Compare `item` of the payload in the site file with how the message begins.',
  ],
  'mark-refused': [
    'The mark was refused by the rules of its station.',
    'Compare the mark in the site file with what the sender says.',
  ],
  'not-listed': [
    'The device may not publish under this topic: the message was dropped.',
    'Correct the topic in the sender; or remove the device and add it again, with this topic too and the same secret.',
  ],
  own: [
    'Topics under `forebond/` are what the agent says: the message was dropped.',
    'Give the sender another topic.',
  ],
  server: [
    'Topics that begin with `$` belong to MQTT itself: the message was dropped.',
    'Give the sender another topic.',
  ],
  future: ['Its time lies ahead of the clock of the agent.', 'Set the clock of the sender.'],
};

const wordsOf = (cause: RefusalCause): Words =>
  words[cause] ?? [`It was refused: ${cause}.`, 'Compare it with the site file.'];

const sentence = (text: string): string =>
  `${text.charAt(0).toUpperCase()}${text.slice(1).replace(/[.\s]+$/, '')}.`;

function messageView(message: RefusedMessage): RefusedTopicView['messages'][number] {
  const { cause, lookedFor, found, words: own, ...facts } = message;
  const [why, fix] = own === null ? wordsOf(cause) : [sentence(own.why), sentence(own.fix)];
  return { ...facts, reason: cause, why, fix, looked_for: lookedFor, found };
}

export const refusedView = (topics: readonly RefusedTopic[]): RefusedTopicView[] =>
  topics.map(({ messages, ...topic }) => ({ ...topic, messages: messages.map(messageView) }));

/** The first of a topic and cause, for the log. */
export function refusedLine(
  topic: string,
  message: RefusedMessage,
): [facts: object, words: string] {
  const { bytes, ...facts } = messageView(message);
  // What was read of one that is too large is not its size.
  const size = message.cause === 'too-large' ? { bytes_read: bytes } : { bytes };
  return [
    { topic, ...facts, ...size },
    'a message was refused; further ones like it: GET /api/refused',
  ];
}
