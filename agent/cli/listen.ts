/**
 * `forebond listen`: what is being published, what it seems to be, and the beginning of a site file.
 *
 * Says first what must be known before anybody fits a sensor. It only reads: any broker will do,
 * and to the embedded one it is a client like others, with a device of its own that may read.
 */
import { readFile } from 'node:fs/promises';
import { type Command, InvalidArgumentError } from 'commander';
import mqtt, { type MqttClient } from 'mqtt';
import { counted } from '#rules/quantity/counted.ts';
import { AgentError } from '../errors.ts';
import { limits } from '../limits.ts';
import { beforeYouFit } from '../listen/before-you-fit.ts';
import type { Guess } from '../listen/guess.ts';
import { guessAt, stubLines } from '../listen/stub.ts';
import { type HeardTopic, TopicBook } from '../listen/topic-book.ts';
import type { CliParts } from './parts.ts';

interface ListenFlags {
  readonly mqtt: string;
  readonly seconds: number;
  readonly topic: readonly string[];
  readonly user?: string;
  readonly secretFile?: string;
  readonly json?: boolean;
}

const secondsDefault = 30;
const secondsMax = 86_400;
/** The agent's own words are no sensors. */
const ownTopic = /^forebond(\/|$)/;

export function listenCommand(program: Command, parts: CliParts): void {
  const { env } = process;
  program
    .command('listen')
    .description('what is being published, what it seems to be, and a site file to begin with')
    .option(
      '--mqtt <url>',
      'broker',
      urlArgument,
      `mqtt://${env.FOREBOND_MQTT ?? '127.0.0.1:1883'}`,
    )
    .option('--seconds <n>', 'how long to listen', secondsArgument, secondsDefault)
    .option('--topic <filter...>', 'topic filters to listen to', ['#'])
    .option('--user <name>', 'user at the broker; the secret is read from FOREBOND_MQTT_SECRET')
    .option('--secret-file <file>', 'file whose first line is the secret')
    .option('--json', 'print one JSON object')
    .action(async (flags: ListenFlags) => {
      const secret = await secretOf(flags);
      if (flags.json !== true) for (const line of beforeYouFit) parts.print(line);
      const book = await listen(flags, secret);
      const lines = flags.json === true ? [asJson(book)] : asText(book, flags);
      for (const line of lines) parts.print(line);
    });
}

async function secretOf({ secretFile, user }: ListenFlags): Promise<string | undefined> {
  if (secretFile === undefined)
    return user === undefined ? undefined : process.env.FOREBOND_MQTT_SECRET;
  const text = await readFile(secretFile, 'utf8').catch((error: NodeJS.ErrnoException) => {
    const reason = error.code ?? error.message;
    throw new AgentError('LISTEN_SECRET_UNREADABLE', { path: secretFile, reason }, error);
  });
  return text.split(/\r?\n/, 1)[0];
}

async function listen(flags: ListenFlags, secret: string | undefined): Promise<TopicBook> {
  const book = new TopicBook(limits.listenTopicsMax);
  const client = await connected(flags, secret);
  try {
    client.on('message', (topic, payload, { retain }) => {
      if (!ownTopic.test(topic)) book.hear(topic, payload, retain, Date.now());
    });
    await subscribed(client, flags);
    await ended(client, flags);
  } finally {
    await client.endAsync(true);
  }
  return book;
}

async function connected(flags: ListenFlags, secret: string | undefined): Promise<MqttClient> {
  const { mqtt: url, user } = flags;
  return await mqtt
    .connectAsync(
      url,
      {
        clientId: `forebond-listen-${process.pid}`,
        reconnectPeriod: 0,
        connectTimeout: 10_000,
        ...(user === undefined ? {} : { username: user }),
        ...(secret === undefined ? {} : { password: secret }),
      },
      false,
    )
    .catch((error: unknown) => {
      throw new AgentError('LISTEN_CANNOT_CONNECT', { url, reason: reasonOf(error) }, error);
    });
}

/** 128 and above: refused. MQTT 3.1.1, clause 3.9.3. */
const refusedFrom = 128;

async function subscribed(client: MqttClient, { topic, mqtt: url }: ListenFlags): Promise<void> {
  const refused = (filters: string, cause?: unknown): AgentError =>
    new AgentError('LISTEN_REFUSED', { url, filters }, cause);
  const grants = await client.subscribeAsync([...topic], { qos: 0 }).catch((error: unknown) => {
    throw refused(topic.join(', '), error);
  });
  const filters = grants.filter(({ qos }) => qos >= refusedFrom).map((grant) => grant.topic);
  if (filters.length > 0) throw refused(filters.join(', '));
}

/** The time asked for, or until Ctrl-C; a connection that is lost ends it with an error. */
function ended(client: MqttClient, { seconds, mqtt: url }: ListenFlags): Promise<void> {
  return new Promise((resolve, reject) => {
    const timer = setTimeout(resolve, seconds * 1_000);
    process.once('SIGINT', () => resolve());
    client.once('close', () => {
      clearTimeout(timer);
      reject(new AgentError('LISTEN_CANNOT_CONNECT', { url, reason: 'the connection was closed' }));
    });
  });
}

const reasonOf = (error: unknown): string =>
  error instanceof Error && 'code' in error && typeof error.code === 'string'
    ? error.code
    : error instanceof Error && error.message !== ''
      ? error.message
      : String(error);

const round = (value: number): number => Number(value.toPrecision(6));

interface Row {
  readonly topic: string;
  readonly every: string;
  readonly payload: string;
  readonly value: string;
  readonly seems: string;
  readonly why: string;
}

/** Why nothing of it can be bound. */
const saidOf: Readonly<Partial<Record<HeardTopic['look']['kind'], string>>> = {
  sparkplug: 'Sparkplug B; this version does not read it',
};

function rowsOf(heard: HeardTopic): Row[] {
  const every = heard.isRetainedOnly
    ? 'retained'
    : heard.everyS === null
      ? 'once'
      : `${round(Number(heard.everyS.toFixed(1)))} s`;
  const { topic, look } = heard;
  if (heard.values.length === 0)
    return [
      {
        topic,
        every,
        payload: look.kind,
        value: '',
        seems: '',
        why: saidOf[look.kind] ?? 'no number in it',
      },
    ];
  return heard.values.map((value) => {
    const guess = guessAt(heard, value);
    return {
      topic,
      every,
      payload: value.pointer === '' ? look.kind : `${look.kind} ${value.pointer}`,
      value: String(round(value.last)),
      seems: guess === null ? '?' : `${guess.quantity} ${guess.unit ?? ''}`.trimEnd(),
      why: guess === null ? 'not known' : whyOf(guess),
    };
  });
}

const whyOf = ({ unit, why, candidates }: Guess): string =>
  unit === null ? `${why} ${candidates.join(' or ')}; ask` : why;

/** What came from outside cannot steer a terminal. */
const shown = (text: string): string =>
  text.replace(/\p{Cc}/gu, (character) => JSON.stringify(character).slice(1, -1));

function asText(book: TopicBook, { seconds, mqtt: url }: ListenFlags): string[] {
  const topics = book.topics();
  if (topics.length === 0) return ['', `Nothing was published at ${url} in ${seconds} s.`];
  const head = {
    topic: 'topic',
    every: 'every',
    payload: 'payload',
    value: 'last',
    seems: 'seems',
    why: 'why',
  };
  const rows = [head, ...topics.flatMap(rowsOf)];
  const widthOf = (column: keyof Row): number =>
    Math.max(...rows.map((row) => shown(row[column]).length));
  const columns = ['topic', 'every', 'payload', 'value', 'seems'] as const;
  const widths = columns.map(widthOf);
  const table = rows.map((row) =>
    [...columns.map((column, i) => shown(row[column]).padEnd(widths[i]!)), shown(row.why)].join(
      '  ',
    ),
  );
  const stub = stubLines(topics);
  const passed = book.passedOver;
  return [
    '',
    ...table,
    ...(passed > 0
      ? [`and ${counted(passed, 'message')} of topics beyond ${limits.listenTopicsMax}`]
      : []),
    ...(stub === null ? [] : ['', ...stub]),
  ];
}

function asJson(book: TopicBook): string {
  const topics = book.topics();
  return JSON.stringify({
    first: beforeYouFit,
    topics: topics.map((heard) => ({
      topic: heard.topic,
      messages: heard.messages,
      every_s: heard.everyS,
      retained_only: heard.isRetainedOnly,
      payload: heard.look.kind,
      time: heard.look.timePointer,
      values: heard.values.map((value) => ({
        pointer: value.pointer,
        last: value.last,
        least: value.least,
        most: value.most,
        guess: guessAt(heard, value),
      })),
    })),
    passed_over: book.passedOver,
    site_file: stubLines(topics)?.join('\n') ?? null,
  });
}

function urlArgument(text: string): string {
  let url: URL;
  try {
    url = new URL(text);
  } catch {
    throw new InvalidArgumentError('write mqtt://HOST:PORT or mqtts://HOST:PORT.');
  }
  if (!['mqtt:', 'mqtts:', 'ws:', 'wss:'].includes(url.protocol))
    throw new InvalidArgumentError('write mqtt://HOST:PORT or mqtts://HOST:PORT.');
  if (url.password !== '')
    throw new InvalidArgumentError('leave the secret out: others on this machine can see it.');
  return text;
}

function secondsArgument(text: string): number {
  const seconds = Number(text);
  if (!(seconds > 0 && seconds <= secondsMax))
    throw new InvalidArgumentError(`write a number of seconds above 0, up to ${secondsMax}.`);
  return seconds;
}
