/**
 * What a mail server's answer, or its silence, means for a message.
 *
 * Sources: RFC 5321 section 4.2 (codes), RFC 3463 (enhanced codes), RFC 4954 section 6 (535, 530).
 * A policy's refusal (x.7.x) counts as `later`: somebody mends the account, and the message is as
 * good then.
 */
import type { Delivery } from '../contract.ts';
import { networkWords } from './ask.ts';

export interface MailFault {
  readonly code?: string | undefined;
  readonly originalCode?: string | undefined;
  readonly responseCode?: number | undefined;
  readonly response?: string | undefined;
  readonly command?: string | undefined;
}

const far = 'The mail server';
const later = (why: string): Delivery => ({
  outcome: 'later',
  afterMs: null,
  cause: `${far} ${why}.`,
});

const enhancedOf = (response: string | undefined): string =>
  /^\d{3}[ -]([245]\.\d{1,3}\.\d{1,3})\b/.exec(response ?? '')?.[1] ?? '';

/** No such mailbox, moved, or closed (RFC 3463 section 3.2 and 3.3). */
const isNoMailbox = (enhanced: string): boolean => /^5\.(1\.(1|2|3|6|10)|2\.1)$/.test(enhanced);
const isTooLong = (enhanced: string, code: number): boolean =>
  /^5\.(2\.3|3\.4)$/.test(enhanced) || (code === 552 && enhanced === '');

/** Of an error of the mail library. */
export function mailOutcome(fault: MailFault): Delivery {
  const { code = '', responseCode, response, command = '' } = fault;
  if (code === 'EMESSAGE' && responseCode === undefined)
    return { outcome: 'refused', cause: `${far} does not take messages of this length.` };
  if (responseCode === undefined || code === 'ETLS') return later(unreached(fault));
  const enhanced = enhancedOf(response);
  const shown = enhanced === '' ? String(responseCode) : `${responseCode} ${enhanced}`;
  if (code === 'EAUTH' || [530, 534, 535, 538].includes(responseCode))
    return later(`does not take the agent’s user and secret (${shown})`);
  if (responseCode < 500) return later(`does not take it now (${shown})`);
  if (isTooLong(enhanced, responseCode))
    return { outcome: 'refused', cause: `${far} finds the message too long (${shown}).` };
  const isAboutMailbox = command === 'RCPT TO' && enhanced === '';
  if (isNoMailbox(enhanced) || (isAboutMailbox && [550, 551, 553].includes(responseCode)))
    return { outcome: 'gone', cause: `${far} knows no such mailbox (${shown}).` };
  if (/^5\.7\./.test(enhanced)) return later(`does not let the agent send there (${shown})`);
  return { outcome: 'refused', cause: `${far} does not take this message (${shown}).` };
}

function unreached(fault: MailFault): string {
  const { code = '', originalCode } = fault;
  if (code === 'ENOAUTH') return 'has no secret of the agent’s user';
  if (code === 'ETIMEDOUT') return 'was not reached: no answer came in time';
  if (code === 'ETLS' && originalCode === undefined) return 'offers no encrypted connection';
  if (code === 'EPROTOCOL') return 'answered something that is no SMTP';
  if (originalCode !== undefined)
    return `was not reached: ${networkWords(Object.assign(new Error(), { code: originalCode }))}`;
  return 'was not reached: the connection was cut';
}
