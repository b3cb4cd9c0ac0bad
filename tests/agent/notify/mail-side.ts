/** A real mail server on loopback that plays one fault, and parses what it takes. */
import { type AddressInfo, createServer, type Server, type Socket } from 'node:net';
import { type ParsedMail, simpleParser } from 'mailparser';
import { SMTPServer, type SMTPServerOptions } from 'smtp-server';
import { makeCertificate } from './certificate.ts';
import type { Fault } from './faults.ts';

export interface TakenMail {
  readonly from: string;
  readonly to: readonly string[];
  readonly secure: boolean;
  readonly user: string | undefined;
  readonly mail: ParsedMail;
  readonly raw: string;
}

export interface MailSide {
  readonly host: string;
  readonly port: number;
  readonly authority: string;
  readonly taken: TakenMail[];
  readonly close: () => Promise<void>;
}

const certificates = Promise.all([makeCertificate(), makeCertificate()]);

/** RFC 3463 and RFC 5321 section 4.2.3; where in the conversation each is said. */
const refusals: Partial<Record<Fault, readonly [at: 'rcpt' | 'data', code: number, text: string]>> =
  {
    '400': ['data', 554, '5.6.0 media error'],
    '404': ['rcpt', 550, '5.1.1 no such user'],
    '410': ['rcpt', 550, '5.2.1 mailbox disabled'],
    '413': ['data', 552, '5.3.4 message too big'],
    '429, again in 7 s': ['rcpt', 450, '4.7.1 too many, try again later'],
    '500': ['data', 451, '4.3.0 local error'],
    '503, again at a date': ['rcpt', 421, '4.3.2 shutting down'],
    'a redirect': ['rcpt', 551, '5.1.6 try elsewhere'],
  };

export const mailUser = { user: 'forebond', secret: 'only-the-server-knows' };

const refusal = (code: number, text: string): Error =>
  Object.assign(new Error(text), { responseCode: code });

export async function mailSide(fault: Fault, options: SMTPServerOptions = {}): Promise<MailSide> {
  const [own, stranger] = await certificates;
  const taken: TakenMail[] = [];
  const sockets = new Set<Socket>();
  const keep = (socket: Socket): void => {
    sockets.add(socket);
    socket.on('error', () => socket.destroy());
    socket.on('close', () => sockets.delete(socket));
  };
  const { listen, close } = rawSides[fault]
    ? rawSide(rawSides[fault])
    : realSide(
        new SMTPServer({ ...talk(fault, taken), key: own.key, cert: own.certificate, ...options }),
      );
  const server = await listen();
  server.on('connection', keep);
  const { port } = server.address() as AddressInfo;
  const end = async (): Promise<void> => {
    for (const socket of sockets) socket.destroy();
    await close();
  };
  if (fault === 'nobody listens') await end();
  return {
    host: fault === 'no such host' ? 'nobody.invalid' : 'localhost',
    port,
    authority: (fault === 'certificate of a stranger' ? stranger : own).authority,
    taken,
    close: fault === 'nobody listens' ? async () => {} : end,
  };
}

/** What it says to whoever connects, in place of a conversation. */
const rawSides: Partial<Record<Fault, (socket: Socket) => void>> = {
  'no answer': (socket) => socket.resume(),
  'half an answer': (socket) => socket.write('220 mail.pla'),
  'an answer without end': (socket) => {
    const write = (): void => {
      while (!socket.destroyed && socket.write('220-'.repeat(4_096)));
    };
    socket.on('drain', write);
    write();
  },
  'the connection cut': (socket) => socket.destroy(),
  'half-open socket': (socket) => socket.pause(),
};

function rawSide(play: (socket: Socket) => void) {
  const server = createServer(play);
  return {
    listen: () => new Promise<Server>((done) => server.listen(0, '127.0.0.1', () => done(server))),
    close: () => new Promise<void>((done) => void server.close(() => done())),
  };
}

function realSide(smtp: SMTPServer) {
  smtp.on('error', () => {}); // a client that cuts its connection is part of the play
  return {
    listen: () =>
      new Promise<Server>((done) => {
        const server = smtp.listen(0, '127.0.0.1', () => done(server));
      }),
    close: () => new Promise<void>((done) => void smtp.close(() => done())),
  };
}

function talk(fault: Fault, taken: TakenMail[]): SMTPServerOptions {
  const says = (at: 'rcpt' | 'data'): Error | null => {
    const [where, code, text] = refusals[fault] ?? [];
    return where === at ? refusal(code!, text!) : null;
  };
  return {
    size: 1_000_000,
    authMethods: ['PLAIN', 'LOGIN'],
    ...(fault === 'no TLS there' ? { disabledCommands: ['STARTTLS'] } : {}),
    allowInsecureAuth: false,
    closeTimeout: 100,
    onAuth: ({ username, password }, _, done) => {
      const right = username === mailUser.user && password === mailUser.secret;
      if (right && fault !== '401') done(null, { user: username });
      else done(refusal(535, '5.7.8 authentication failed'));
    },
    onRcptTo: (_, __, done) => done(says('rcpt')),
    onData: (stream, session, done) => {
      const parts: Buffer[] = [];
      stream.on('data', (part: Buffer) => parts.push(part));
      stream.on('end', async () => {
        const wrong = says('data');
        if (wrong !== null) return done(wrong);
        const raw = Buffer.concat(parts);
        const { mailFrom, rcptTo } = session.envelope;
        taken.push({
          from: mailFrom === false ? '' : mailFrom.address,
          to: rcptTo.map(({ address }) => address),
          secure: session.secure,
          user: typeof session.user === 'string' ? session.user : undefined,
          mail: await simpleParser(raw),
          raw: raw.toString('latin1'),
        });
        return done();
      });
    },
  };
}
