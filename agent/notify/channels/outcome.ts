/**
 * What an answer in HTTP means for a message. Meanings: RFC 9110 section 15, RFC 6585 section 4.
 *
 * 401, 403 and their kin count as `later`: they speak of a secret or a clock, which somebody mends,
 * and the message is as good then.
 */
import type { Delivery } from '../contract.ts';
import type { Asked } from './ask.ts';

const mendable = new Set([401, 402, 403, 407, 408, 421, 423, 424, 425, 426, 429, 451]);

/** `far` begins the cause: "The push service". */
export function outcomeOf(far: string, asked: Asked): Delivery {
  if (asked.kind === 'out-of-reach')
    return { outcome: 'refused', cause: `${far} has an address that the agent does not ask.` };
  if (asked.kind === 'failed')
    return { outcome: 'later', afterMs: null, cause: `${far} was not reached: ${asked.cause}.` };
  const { status, retryAfterMs: afterMs } = asked;
  if (status >= 200 && status < 300) return { outcome: 'delivered' };
  if (status === 404 || status === 410)
    return { outcome: 'gone', cause: `${far} says that this target is no more (${status}).` };
  if (status >= 500 || mendable.has(status))
    return {
      outcome: 'later',
      afterMs,
      cause: `${far} does not take it now (${status}${why(status)}).`,
    };
  if (status >= 300 && status < 400)
    return {
      outcome: 'refused',
      cause: `${far} points elsewhere (${status}), which is not followed.`,
    };
  return {
    outcome: 'refused',
    cause: `${far} does not take this message (${status}${why(status)}).`,
  };
}

const whys: Readonly<Record<number, string>> = {
  400: ', it cannot read it',
  401: ', the secret is not the one it knows',
  403: ', the secret is not the one it knows',
  413: ', it is too long for it',
  429: ', it got too many',
};
const why = (status: number): string => whys[status] ?? '';
