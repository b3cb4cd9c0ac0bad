/**
 * The text of a push: all a phone without network needs, within what one record holds.
 *
 * Always true: it fits. What gives way: first the consequence, then the ends of long texts; the
 * ids, the signal word and a beginning of every other text stay. A do-not is never cut: in German half
 * of one may say to do it.
 */
import { limits } from '../../limits.ts';
import type { PushNotice } from '../../web/contract.ts';
import type { Message } from '../contract.ts';

const bytesOf = (value: unknown): number => Buffer.byteLength(JSON.stringify(value));

/** The longest beginning that takes no more than so many bytes of JSON, its quotes included. */
export function cutToBytes(text: string, bytesMax: number): string {
  if (bytesOf(text) <= bytesMax) return text;
  const letters = [...text];
  let [fits, tooLong] = [0, Math.min(letters.length, bytesMax)];
  while (tooLong - fits > 1) {
    const middle = (fits + tooLong) >> 1;
    if (bytesOf(`${letters.slice(0, middle).join('')}…`) <= bytesMax) fits = middle;
    else tooLong = middle;
  }
  return `${letters.slice(0, fits).join('').trimEnd()}…`;
}

/** What each text may take, tried in turn; the last always fits. */
const allowances = [1_500, 800, 500, 350, 250, 180, 120, 80, 40];

export function pushText(message: Message): Buffer {
  const {
    consequence,
    limitText: limit,
    highlyManaged,
    doNot,
    site: _,
    usefulUntil: __,
    details: ___,
    attachment: ____,
    ...same
  } = message;
  const whole: PushNotice = {
    ...same,
    consequence,
    limit,
    highly_managed: highlyManaged,
    do_not: [...doNot],
    steps: message.steps.slice(0, 3),
  };
  const tries = [whole, { ...whole, consequence: '' }];
  for (const notice of tries) if (fits(notice)) return Buffer.from(JSON.stringify(notice));
  for (const bytesMax of allowances) {
    const shorter = cut({ ...whole, consequence: '' }, bytesMax);
    if (fits(shorter)) return Buffer.from(JSON.stringify(shorter));
  }
  throw new Error('the ids of a message are longer than a push');
}

const fits = (notice: PushNotice): boolean => bytesOf(notice) <= limits.pushTextBytesMax;

function cut(notice: PushNotice, bytesMax: number): PushNotice {
  const shorter = (text: string): string => cutToBytes(text, bytesMax);
  return {
    ...notice,
    title: shorter(notice.title),
    sentence: shorter(notice.sentence),
    steps: notice.steps.map(shorter),
    do_not: notice.do_not.filter((text) => shorter(text) === text),
    caution: shorter(notice.caution),
    deferral: shorter(notice.deferral),
    limit: shorter(notice.limit),
  };
}
