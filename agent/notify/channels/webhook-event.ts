/** A message as an event for programs: CloudEvents 1.0 in structured JSON. */
import { limits } from '../../limits.ts';
import type { Message } from '../contract.ts';

const cut = (text: string): string => text.slice(0, limits.channelTextCharsMax).toWellFormed();

export interface CloudEvent {
  readonly specversion: '1.0';
  /** The message's key: equal in every sending, so that the receiver knows a repeat by it. */
  readonly id: string;
  readonly source: string;
  readonly type: string;
  /** The occurrence; absent where the message is of none. */
  readonly subject?: string;
  readonly time: string;
  readonly datacontenttype: 'application/json';
  readonly data: Readonly<Record<string, unknown>>;
}

/**
 * What can hurt stands before the steps, for programs that print it in the order it comes in.
 * `page`: the address of the agent's page. Names on the wire are snake case, unit last.
 */
export function cloudEvent(message: Message, page: string): CloudEvent {
  const { occurrence, site } = message;
  return {
    specversion: '1.0',
    id: message.key,
    source: `urn:forebond:${encodeURIComponent(site)}`,
    type: `forebond.telling.${message.kind}`,
    ...(occurrence === null ? {} : { subject: occurrence }),
    time: new Date(message.at).toISOString(),
    datacontenttype: 'application/json',
    data: {
      occurrence,
      thread: message.thread,
      site,
      station: message.station,
      word: message.word,
      priority: message.priority,
      highly_managed: message.highlyManaged,
      language: message.language,
      title: cut(message.title),
      sentence: cut(message.sentence),
      limit: cut(message.limitText),
      consequence: cut(message.consequence),
      do_not: message.doNot.map(cut),
      caution: cut(message.caution),
      steps: message.steps.map(cut),
      deferral: cut(message.deferral),
      count: message.count,
      url: `${page}${message.url}`,
    },
  };
}
