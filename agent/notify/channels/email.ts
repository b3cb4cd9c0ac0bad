/**
 * Messages by e-mail (RFC 5321), text and HTML.
 *
 * Always true: it goes over TLS with a certificate that is verified, unless the server is this very
 * machine; all messages of one alarm make one thread; one that is sent again has the Message-ID it
 * had, so that a mailbox can tell the repeat.
 */
import { createHash } from 'node:crypto';
import { createTransport } from 'nodemailer';
import { limits } from '../../limits.ts';
import type { Channel, Delivery, Message, Target } from '../contract.ts';
import { type MailFault, mailOutcome } from './mail-outcome.ts';
import { htmlText, plainText, subjectOf } from './mail-text.ts';

export interface MailServer {
  readonly host: string;
  readonly port: number;
  /** `tls` from the first byte, `starttls` before anything is said; `none` on this machine alone. */
  readonly security: 'starttls' | 'tls' | 'none';
  readonly user: string | null;
  readonly secret: string | null;
  /** `Forebond <alarms@plant.example>`. */
  readonly from: string;
}

export interface EmailParts {
  /** null where the site file names none. */
  readonly server: () => MailServer | null;
  readonly page: () => string;
  readonly timezone: () => string;
  /** PEM of all authorities that are trusted; absent: those Node knows. */
  readonly authorities?: readonly string[];
  readonly answerMs?: number;
}

const hash = (text: string): string =>
  createHash('sha256').update(text).digest('base64url').slice(0, 32);

/** The domain of an address; of none `forebond.invalid` (RFC 6761: nobody's). */
export const domainOf = (from: string): string =>
  /@([\w.-]+\w)>?\s*$/.exec(from)?.[1] ?? 'forebond.invalid';

/** RFC 5322 section 3.6.4. Everything of a thread points at one id that no message has. */
export const messageIds = (message: Message, domain: string) => ({
  messageId: `<${hash(message.key)}@${domain}>`,
  thread: `<thread-${hash(message.thread)}@${domain}>`,
});

export class EmailChannel implements Channel {
  readonly name = 'email';
  private readonly parts: EmailParts;

  constructor(parts: EmailParts) {
    this.parts = parts;
  }

  async send(message: Message, target: Target, signal: AbortSignal): Promise<Delivery> {
    const { server: ofSite, page, timezone, answerMs = limits.channelAnswerMs } = this.parts;
    const server = ofSite();
    if (server === null)
      return { outcome: 'refused', cause: 'The site file names no mail server.' };
    if (server.user !== null && server.secret === null)
      return {
        outcome: 'later',
        afterMs: null,
        cause: 'The secret of the mail server’s user is missing; the log says where it belongs.',
      };
    const tooLong = AbortSignal.timeout(answerMs);
    const place = { page: page(), timezone: timezone() };
    const { messageId, thread } = messageIds(message, domainOf(server.from));
    const isUrgent = message.priority === 'high' && !message.silent;
    try {
      await this.transport(server, answerMs).sendMail({
        from: server.from,
        to: { name: '', address: target.address },
        subject: subjectOf(message),
        text: plainText(message, place),
        html: htmlText(message, place),
        messageId,
        inReplyTo: thread,
        references: thread,
        attachments: attachmentsOf(message),
        // RFC 3834 section 5: no absence notice answers it.
        headers: { 'Auto-Submitted': 'auto-generated' },
        ...(isUrgent ? { priority: 'high' as const } : {}),
        disableFileAccess: true,
        disableUrlAccess: true,
        signal: AbortSignal.any([signal, tooLong]),
      });
      return { outcome: 'delivered' };
    } catch (error) {
      return outcomeOf(error, signal, tooLong, answerMs);
    }
  }

  private transport(server: MailServer, answerMs: number) {
    const { host, port, security, user, secret } = server;
    const { authorities } = this.parts;
    return createTransport({
      host,
      port,
      secure: security === 'tls',
      requireTLS: security === 'starttls',
      ignoreTLS: security === 'none',
      ...(user === null ? {} : { auth: { user, pass: secret ?? '' } }),
      tls: {
        minVersion: 'TLSv1.2',
        ...(authorities === undefined ? {} : { ca: [...authorities] }),
      },
      connectionTimeout: answerMs,
      greetingTimeout: answerMs,
      socketTimeout: answerMs,
      dnsTimeout: answerMs,
      socketCloseTimeout: 0,
      maxResponseSize: limits.channelAnswerBytesMax,
    });
  }
}

const attachmentsOf = ({ attachment }: Message) =>
  attachment === undefined
    ? []
    : [
        {
          filename: attachment.name,
          contentType: attachment.contentType,
          content: attachment.text,
        },
      ];

function outcomeOf(
  error: unknown,
  stop: AbortSignal,
  tooLong: AbortSignal,
  answerMs: number,
): Delivery {
  const later = (cause: string): Delivery => ({ outcome: 'later', afterMs: null, cause });
  if (stop.aborted) return later('The mail server was not waited for: the agent stopped.');
  if (tooLong.aborted)
    return later(`The mail server was not reached: no answer within ${answerMs / 1_000} s.`);
  if (!(error instanceof Error)) throw error;
  // Only what the library marks as its own; anything else is a fault of the agent's.
  if (!('code' in error)) throw error;
  return mailOutcome(error as MailFault);
}
