/**
 * Topic names and topic filters of MQTT 3.1.1, clause 4.7: which are valid, and which match.
 * The broker library lets `a+`, `+a` and `a#` pass as filters, so the door checks for itself.
 *
 * Always true: a filter that `filterFault` passes holds `#` only as its whole last level and
 * `+` only as a whole level; a name that `topicFault` passes holds neither.
 */

/** [MQTT-4.7.3-3]: a name or filter is at most 65,535 bytes of UTF-8. */
export const topicBytesProtocolMax = 65_535;

export type TextFault = 'empty' | 'too-long' | 'nul' | 'not-utf-8';
export type TopicFault = TextFault | 'wildcard';
export type FilterFault = TextFault | 'plus-not-alone' | 'hash-not-alone' | 'hash-not-last';

/** What a person is told about a fault. */
export const faultText: Readonly<Record<TopicFault | FilterFault, string>> = {
  empty: 'it is empty',
  'too-long': 'it is longer than the limit',
  nul: 'it holds the character U+0000',
  'not-utf-8': 'it is not well-formed UTF-8',
  wildcard: 'a topic that is published to cannot hold + or #',
  'plus-not-alone': '+ must be a whole level',
  'hash-not-alone': '# must be a whole level',
  'hash-not-last': '# must be the last level',
};

/**
 * The rules a name and a filter have in common: [MQTT-4.7.3-1] to [MQTT-4.7.3-3], [MQTT-1.5.3-1].
 * U+FFFD is refused because a decoder puts it where ill-formed bytes stood: a topic that holds
 * it can no longer be told from one that was never UTF-8.
 */
function textFault(text: string, bytesMax: number): TextFault | null {
  if (text.length === 0) return 'empty';
  // One UTF-16 unit is at most three bytes, so short text needs no count.
  if (text.length * 3 > bytesMax && Buffer.byteLength(text) > bytesMax) return 'too-long';
  if (text.includes('\u0000')) return 'nul';
  if (text.includes('\uFFFD') || !text.isWellFormed()) return 'not-utf-8';
  return null;
}

/** What is wrong with a topic name, or null. `bytesMax` is in bytes of UTF-8. */
export function topicFault(topic: string, bytesMax = topicBytesProtocolMax): TopicFault | null {
  const fault = textFault(topic, bytesMax);
  if (fault !== null) return fault;
  // [MQTT-3.3.2-2]
  return topic.includes('+') || topic.includes('#') ? 'wildcard' : null;
}

/** What is wrong with a topic filter, or null. `bytesMax` is in bytes of UTF-8. */
export function filterFault(filter: string, bytesMax = topicBytesProtocolMax): FilterFault | null {
  const fault = textFault(filter, bytesMax);
  if (fault !== null) return fault;
  const levels = filter.split('/');
  for (let i = 0; i < levels.length; i++) {
    const level = levels[i]!;
    // [MQTT-4.7.1-3]
    if (level.includes('+') && level !== '+') return 'plus-not-alone';
    if (!level.includes('#')) continue;
    // [MQTT-4.7.1-2]
    if (level !== '#') return 'hash-not-alone';
    if (i !== levels.length - 1) return 'hash-not-last';
  }
  return null;
}

/** Topics that begin with `$` belong to the server. Clause 4.7.2. */
export const isServerTopic = (topic: string): boolean => topic.startsWith('$');

const startsWithWildcard = (filter: string): boolean =>
  filter.startsWith('+') || filter.startsWith('#');

/** Whether a valid filter matches a valid topic name. Clauses 4.7.1 and 4.7.2. */
export function topicMatches(filter: string, topic: string): boolean {
  // [MQTT-4.7.2-1]
  if (isServerTopic(topic) && startsWithWildcard(filter)) return false;
  const wanted = filter.split('/');
  const levels = topic.split('/');
  for (let i = 0; i < wanted.length; i++) {
    // `#` stands for the parent too, so it also matches where the topic has just ended.
    if (wanted[i] === '#') return true;
    if (i === levels.length) return false;
    if (wanted[i] !== '+' && wanted[i] !== levels[i]) return false;
  }
  return wanted.length === levels.length;
}

/** Whether every topic that `inner` matches is matched by `outer` too. Both must be valid filters. */
export function filterCovers(outer: string, inner: string): boolean {
  if (isServerTopic(inner) && startsWithWildcard(outer)) return false;
  // A topic is never empty. So `+/#` says the same as `#`, and `/#` the same as `/+/#`.
  if (outer === '+/#') return true;
  const wide = outer.split('/');
  const narrow = (inner === '/#' ? '/+/#' : inner).split('/');
  for (let i = 0; i < wide.length; i++) {
    if (wide[i] === '#') return true;
    if (i === narrow.length || narrow[i] === '#') return false;
    if (wide[i] !== '+' && wide[i] !== narrow[i]) return false;
  }
  return wide.length === narrow.length;
}
