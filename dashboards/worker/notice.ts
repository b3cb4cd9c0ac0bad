/**
 * A push as a notification: complete in itself, so that a phone without network shows all of it.
 *
 * Always true: do-nots stand before the steps; what became of an alarm takes the place of its
 * notification and makes no sound; high priority stays until somebody touches it; a highly managed
 * alarm has no button but the one that leads to its page.
 */
import type { PushNotice } from '../../agent/web/contract.ts';
import { workerWords } from '../text/worker-words.ts';
import type { NoticeOptions } from './scope.ts';

export interface ShownNotice {
  readonly title: string;
  readonly options: NoticeOptions;
}

const isText = (value: unknown): value is string => typeof value === 'string';
const areTexts = (value: unknown): boolean => Array.isArray(value) && value.every(isText);

/** What it must have to be shown; null where a push is none of ours. */
export function noticeOf(data: unknown): PushNotice | null {
  if (typeof data !== 'object' || data === null) return null;
  const notice = data as PushNotice;
  const { title, sentence, thread, url, kind, steps, do_not: doNot, at } = notice;
  const whole = [title, sentence, thread, kind].every(isText) && isOwnPath(url);
  const lists = areTexts(steps) && areTexts(doNot) && typeof at === 'number';
  return whole && lists ? notice : null;
}

/** A path of this agent, never another place. */
const isOwnPath = (url: unknown): boolean => isText(url) && /^\/(?![/\\])/.test(url);

export const languageOf = (notice: PushNotice): 'en' | 'de' =>
  notice.language === 'de' ? 'de' : 'en';

/** One that a tap on the notification itself may answer. */
export const isAnswerable = ({ kind, occurrence, highly_managed: managed }: PushNotice): boolean =>
  (kind === 'alarm' || kind === 'again') && occurrence !== null && managed === false;

export function shownNotice(notice: PushNotice): ShownNotice {
  const words = workerWords[languageOf(notice)];
  const isUrgent = notice.priority === 'high' && !notice.silent;
  const look = { action: 'look', title: words.look };
  const answer = { action: 'acknowledge', title: words.acknowledge };
  return {
    title: notice.title,
    options: {
      body: bodyOf(notice),
      tag: notice.thread,
      renotify: !notice.silent,
      silent: notice.silent,
      requireInteraction: isUrgent,
      timestamp: notice.at,
      lang: languageOf(notice),
      icon: '/mark-192.png',
      badge: '/mark-192.png',
      actions: isAnswerable(notice) ? [answer, look] : [look],
      ...(isUrgent ? { vibrate: [400, 200, 400, 200, 400] } : {}),
      data: notice,
    },
  };
}

function bodyOf(notice: PushNotice): string {
  const steps = notice.steps.map((step, i) => `${i + 1} ${step}`);
  return [notice.sentence, ...notice.do_not, notice.caution, ...steps]
    .filter((line) => isText(line) && line !== '')
    .join('\n');
}

/** What is shown of a push that cannot be read: a push that shows nothing costs the right to push. */
export function unreadable(language: 'en' | 'de'): ShownNotice {
  const words = workerWords[language];
  return {
    title: words.unreadable,
    options: { body: words.unreadableSays, tag: 'unreadable', icon: '/mark-192.png', data: null },
  };
}
