/**
 * One POST to a far side, bounded in every way.
 *
 * Always true: it ends within its time, whatever the far side does or leaves undone; of the answer
 * no more than a bound is read; a redirect is an answer and is not followed; certificates are
 * verified.
 */
import { type IncomingMessage, request as plainRequest } from 'node:http';
import { request as secureRequest } from 'node:https';
import { limits } from '../../limits.ts';
import { checkLiteral, lookupWithin, OutOfReach, type Reach } from './reach.ts';

export interface Question {
  /** https; http where `url` is on this machine. */
  readonly url: string;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: Buffer;
  /** `any` for a host that somebody listed. */
  readonly reach: Reach | 'any';
  /** PEM, beside the authorities Node knows. */
  readonly authorities?: readonly string[];
  readonly answerMs?: number;
}

export type Asked =
  | { readonly kind: 'answer'; readonly status: number; readonly retryAfterMs: number | null }
  /** Nobody may be asked there. */
  | { readonly kind: 'out-of-reach' }
  /** No whole answer, and why in plain words. */
  | { readonly kind: 'failed'; readonly cause: string };

/** Never rejects for what the far side does. */
export async function ask(question: Question, stop: AbortSignal): Promise<Asked> {
  const { url, reach, answerMs = limits.channelAnswerMs } = question;
  const tooLong = AbortSignal.timeout(answerMs);
  try {
    if (reach !== 'any') checkLiteral(reach, new URL(url).hostname);
    const answer = await answerOf(question, AbortSignal.any([stop, tooLong]));
    const retryAfterMs = waitOf(answer.headers['retry-after'], Date.now());
    return { kind: 'answer', status: answer.statusCode ?? 0, retryAfterMs };
  } catch (error) {
    if (error instanceof OutOfReach) return { kind: 'out-of-reach' };
    if (stop.aborted) return { kind: 'failed', cause: 'the agent stopped meanwhile' };
    if (tooLong.aborted)
      return { kind: 'failed', cause: `no answer came within ${answerMs / 1_000} s` };
    return { kind: 'failed', cause: networkWords(error) };
  }
}

function answerOf(question: Question, signal: AbortSignal): Promise<IncomingMessage> {
  const { url, headers, body, reach, authorities } = question;
  const request = url.startsWith('http:') ? plainRequest : secureRequest;
  return new Promise((answered, failed) => {
    const asking = request(url, {
      method: 'POST',
      headers: { ...headers, 'content-length': String(body.length) },
      agent: false,
      signal,
      ...(reach === 'any' ? {} : { lookup: lookupWithin(reach) }),
      ...(authorities === undefined ? {} : { ca: [...authorities] }),
    });
    asking.on('error', failed);
    asking.on('response', (answer) => {
      let readBytes = 0;
      answer.on('data', (part: Buffer) => {
        readBytes += part.length;
        if (readBytes <= limits.channelAnswerBytesMax) return;
        answered(answer);
        asking.destroy();
      });
      answer.on('end', () => answered(answer));
      answer.on('error', failed);
    });
    asking.end(body);
  });
}

/** Seconds or a date (RFC 9110 section 10.2.3); null where it says neither. */
export function waitOf(written: string | undefined, nowMs: number): number | null {
  if (written === undefined) return null;
  const isSeconds = /^\s*\d+\s*$/.test(written);
  const ms = isSeconds ? Number(written) * 1_000 : Date.parse(written) - nowMs;
  return Number.isNaN(ms) ? null : Math.min(limits.channelRetryAfterMsMax, Math.max(0, ms));
}

const words: Readonly<Record<string, string>> = {
  ENOTFOUND: 'its name is not known in this network',
  EAI_AGAIN: 'its name could not be looked up; there may be no network',
  ECONNREFUSED: 'nobody listens there',
  ECONNRESET: 'the connection was cut',
  EPIPE: 'the connection was cut',
  ETIMEDOUT: 'no connection came about',
  EHOSTUNREACH: 'there is no way to it in this network',
  ENETUNREACH: 'there is no way to it in this network',
  EPROTO: 'no encrypted connection came about',
  CERT_HAS_EXPIRED: 'its certificate is out of date, or this machine’s clock is wrong',
  CERT_NOT_YET_VALID: 'its certificate is not valid yet, or this machine’s clock is wrong',
  ERR_TLS_CERT_ALTNAME_INVALID: 'its certificate is for another name',
  DEPTH_ZERO_SELF_SIGNED_CERT: 'its certificate is of an authority that is not known here',
  SELF_SIGNED_CERT_IN_CHAIN: 'its certificate is of an authority that is not known here',
  UNABLE_TO_VERIFY_LEAF_SIGNATURE: 'its certificate is of an authority that is not known here',
  UNABLE_TO_GET_ISSUER_CERT_LOCALLY: 'its certificate is of an authority that is not known here',
  CERT_SIGNATURE_FAILURE: 'its certificate is of an authority that is not known here',
};

/** Why a connection failed, without its address. */
export function networkWords(error: unknown): string {
  const code = codeOf(error);
  if (words[code] !== undefined) return words[code];
  if (/SSL|TLS/.test(code)) return words.EPROTO!;
  if (code.startsWith('HPE_')) return 'it answered something that is no HTTP';
  return code === '' ? 'the connection failed' : `the connection failed (${code})`;
}

function codeOf(error: unknown): string {
  if (error instanceof AggregateError && error.errors.length > 0) return codeOf(error.errors[0]);
  return error instanceof Error && 'code' in error ? String(error.code) : '';
}
