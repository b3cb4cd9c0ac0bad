/**
 * Every error the agent tells people about: a stable code, what happened, and how to mend it.
 * docs/errors.md holds exactly this catalogue; a test compares them.
 */
export interface ErrorEntry {
  readonly happened: string;
  readonly fix: string;
}

/** `{name}` is filled from the facts. */
export const errorCatalogue = {
  STORE_DISK_FULL: {
    happened: 'The disk that holds {path} is full.',
    fix: 'Free space on it; nothing acknowledged is lost, and the agent carries on by itself.',
  },
  STORE_DISK_FAILED: {
    happened: 'The disk refused an operation on {path}: {reason}.',
    fix: 'Check the disk and its cable or card; replace it if this repeats. Alarms are still told.',
  },
  STORE_DAMAGED: {
    happened: 'The database {path} is damaged: {reason}.',
    fix: 'Start the agent again: it moves the damaged file aside, begins a new one with the settings of the latest backup and says so. Alarms are told meanwhile.',
  },
  STORE_TAKEN_AWAY: {
    happened: '{name} {state} ({path}), while this agent writes it: nothing is kept any more.',
    fix: 'Put the file back as it was, or start the agent again, which begins a new store. Alarms are told meanwhile; messages are not acknowledged.',
  },
  STORE_TWO_AGENTS: {
    happened:
      'Another agent has taken the data folder {path}, whose agent.lock was removed or replaced: this one keeps nothing any more.',
    fix: 'Stop both, then start one. Never remove agent.lock while an agent runs.',
  },
  FOLDER_MISSING: {
    happened: 'There is no data folder {path}.',
    fix: 'Check its name. A new one is made when an agent first runs on it, or by mkdir.',
  },
  FOLDER_TAKEN: {
    happened: '{path} holds other files, and is no data folder.',
    fix: 'Name an empty folder, a new one, or a data folder with --data.',
  },
  FOLDER_UNUSABLE: {
    happened: '{path} cannot be the data folder: {reason}.',
    fix: 'Name a folder of your own on a local disk with --data.',
  },
  STORE_EMPTY: {
    happened: 'The data folder {path} holds no record yet.',
    fix: 'Run an agent on it first, or name another with --data.',
  },
  STORE_GONE: {
    happened: 'The database of the data folder {path} is gone, and there was one.',
    fix: 'Put forebond.db back; or start an agent on it, which begins a new store and says so.',
  },
  STORE_NOT_A_STORE: {
    happened: '{path} is not a Forebond store.',
    fix: 'Name the data folder with --data, or move that file away to begin a new store.',
  },
  STORE_NEWER: {
    happened: '{path} was written by a newer Forebond (schema {found}, this one knows {known}).',
    fix: 'Install that version or a later one; an older one never opens a newer store.',
  },
  STORE_OLDER: {
    happened: '{path} has schema {found}, and this command reads {known}.',
    fix: 'Start the agent on it once: it copies the database into backups/ and takes it up.',
  },
  STORE_TOO_OLD: {
    happened: '{path} has schema {found}, and this Forebond has no way from there to {known}.',
    fix: 'Open it once with the version before this one, then with this one.',
  },
  STORE_NO_WAL: {
    happened: 'The file system of {path} cannot share memory between processes.',
    fix: 'Name a folder on a local disk with --data; network shares do not do.',
  },
  STORE_SIGNAL_CHANGED: {
    happened: 'Signal "{name}" is stored as {stored} and is now to be {asked}.',
    fix: 'Give the changed signal a new id; what is stored keeps its meaning.',
  },
  STORE_CHECKPOINT_INVALID: {
    happened: '{path} is not a ledger checkpoint: {reason}.',
    fix: 'Name a file with a record number and its hash as JSON, as `ledger verify --json` prints them.',
  },
  STORE_LOCKED: {
    happened: 'Another agent holds the data folder {path}.',
    fix: 'Stop it first, or give this one another folder with --data.',
  },
  DEMO_FOLDER_TAKEN: {
    happened: '{path} holds something that the demo line did not make.',
    fix: 'Name an empty or new folder with --data; the demo never writes into a plant’s own.',
  },
  LISTEN_CANNOT_CONNECT: {
    happened: 'No connection to the broker at {url}: {reason}.',
    fix: 'Check address and port; a broker that asks for a user needs --user NAME and its secret in FOREBOND_MQTT_SECRET.',
  },
  LISTEN_REFUSED: {
    happened: 'The broker at {url} does not let this user read {filters}.',
    fix: 'For the embedded broker: `device add NAME --read "#"`, then --user NAME with its secret in FOREBOND_MQTT_SECRET; or name what may be read with --topic.',
  },
  LISTEN_SECRET_UNREADABLE: {
    happened: 'The secret could not be read from {path}: {reason}.',
    fix: 'Name a file whose first line is the secret, readable by you alone.',
  },
  WEB_NOT_LOOPBACK: {
    happened: 'The page was asked to listen on {host}, where other machines can reach it.',
    fix: 'Listen on 127.0.0.1 or [::1]. Other addresses need people with passwords and TLS, which this version has not.',
  },
  WEB_ADDRESS_UNUSABLE: {
    happened: 'The page cannot listen on {host}:{port}: {reason}.',
    fix: 'Stop the program that uses this port, or name another with --http HOST:PORT.',
  },
  WEB_HOST_REFUSED: {
    happened: 'The request names the host "{host}", under which this agent does not answer.',
    fix: 'Use one of: {allowed}.',
  },
  WEB_ORIGIN_REFUSED: {
    happened: 'The request comes from another site ({from}).',
    fix: 'Send it from the agent’s own page, or from a program that is no browser.',
  },
  WEB_PAGE_MISSING: {
    happened: 'The page has not been built.',
    fix: 'Run npm run build and start the agent again; the API answers meanwhile.',
  },
  WEB_ROUTE_UNKNOWN: {
    happened: 'There is nothing at {path}.',
    fix: 'GET /api/openapi.json lists every route; ids inside a path are URL-encoded, "/" as %2F.',
  },
  WEB_METHOD_UNKNOWN: {
    happened: '{method} is not possible at {path}.',
    fix: 'Use one of: {allowed}.',
  },
  WEB_REQUEST_MALFORMED: {
    happened: 'The request could not be read: {reason}.',
    fix: 'Send HTTP/1.1 with a well-formed path; "%" begins two hexadecimal digits.',
  },
  WEB_REQUEST_SLOW: {
    happened: 'The request was not complete after {seconds} s.',
    fix: 'Send it again; if this repeats, look at the network in between.',
  },
  WEB_EXPECTATION_UNKNOWN: {
    happened: 'The request expects "{expected}" of this agent, which it does not know.',
    fix: 'Leave the header Expect out, or send 100-continue.',
  },
  WEB_HEADERS_TOO_LARGE: {
    happened: 'The headers of the request are too large.',
    fix: 'Send fewer or shorter headers; cookies are not needed.',
  },
  WEB_ID_TOO_LONG: {
    happened: 'A part of the path is longer than {chars} characters.',
    fix: 'Use an id as GET /api/signals, /api/alarms or /api/holds gives it.',
  },
  WEB_BODY_TOO_LARGE: {
    happened: 'The body is larger than {bytes} bytes.',
    fix: 'Send less; no command needs more.',
  },
  WEB_BODY_NOT_JSON: {
    happened: 'The body is said to be "{type}".',
    fix: 'Send JSON with the header Content-Type: application/json.',
  },
  WEB_BODY_UNREADABLE: {
    happened: 'The body is not readable JSON.',
    fix: 'Send one JSON object in UTF-8, without __proto__ or constructor as a name.',
  },
  WEB_PARAMETER_WRONG: {
    happened: 'The request has parameters that cannot be used: {names}.',
    fix: 'Mend those listed under "parameters"; GET /api/openapi.json describes them.',
  },
  WEB_SIGNAL_UNKNOWN: {
    happened: 'There is no signal "{id}".',
    fix: 'GET /api/signals lists them; the id is line/station/signal, URL-encoded.',
  },
  WEB_OCCURRENCE_UNKNOWN: {
    happened: 'There is no alarm occurrence "{id}".',
    fix: 'GET /api/alarms lists them; the id is <rule>@<judged ms>, URL-encoded.',
  },
  WEB_HOLD_UNKNOWN: {
    happened: 'There is no hold "{id}".',
    fix: 'GET /api/holds lists them; the id is URL-encoded.',
  },
  WEB_RUN_UNKNOWN: {
    happened: 'There is no oven run "{id}".',
    fix: 'GET /api/runs lists them; the id is <line/station>@<judged ms>, URL-encoded.',
  },
  WEB_COMMAND_REFUSED: {
    happened: 'Nothing was changed: {why}.',
    fix: 'Read the present state with GET /api/alarms or /api/holds and decide again.',
  },
  WEB_ANSWER_LATE: {
    happened: 'No answer was ready after {seconds} s.',
    fix: 'Read the present state before sending a command again: it may still be carried out. GET /api/health says what is slow.',
  },
  WEB_STREAM_FULL: {
    happened: 'All {max} places on the stream are taken.',
    fix: 'Close pages that nobody looks at, or come back later.',
  },
  WEB_STREAM_ONLY_EVENTS: {
    happened: 'The stream gives text/event-stream, which the request does not accept.',
    fix: 'Send Accept: text/event-stream, or none.',
  },
  WEB_FAULT: {
    happened: 'The agent failed to answer; its log says why.',
    fix: 'Try again; if it repeats, report it with the log line.',
  },
  STORE_FRAME_UNREADABLE: {
    happened: 'Stored samples cannot be read: {reason}.',
    fix: 'They are left out and the rest serves; check the disk, and restore a backup if this repeats.',
  },
  STORE_SEAL_FAILED: {
    happened: 'The samples of the last hour could not be packed: {reason}.',
    fix: 'Nothing is lost; they stay in the log and packing is tried again. Report it if it repeats.',
  },
  STORE_SIGNAL_UNKNOWN: {
    happened: 'The store has no signal "{name}".',
    fix: 'Name one as the site file spells it, line/station/signal.',
  },
  STORE_READER_BUSY: {
    happened: '{waiting} charts are waiting to be read already.',
    fix: 'Ask again in a moment, or for fewer charts at once.',
  },
  STORE_READER_FAILED: {
    happened: 'Reading the store failed: {reason}.',
    fix: 'Ask again; if it repeats, check the disk that holds the data folder.',
  },
  MQTT_NEEDS_DEVICES: {
    happened: 'MQTT would listen on {host}, open to the network, and no device has a secret yet.',
    fix: 'Add devices with "forebond device add", or listen on 127.0.0.1.',
  },
  MQTT_CANNOT_LISTEN: {
    happened: 'MQTT cannot listen on {host}:{port}: {reason}.',
    fix: 'Stop what holds that port, or name another with --mqtt HOST:PORT.',
  },
  DEVICE_FILE_BROKEN: {
    happened: 'The list of devices {path} is not usable: {problems}.',
    fix: 'Mend it, or move it away and add the devices again.',
  },
  DEVICE_FILE_GONE: {
    happened: 'The list of devices {path} is gone.',
    fix: 'Put it back, or add the devices again with "forebond device add". The devices it last named are let in meanwhile, and nobody else.',
  },
  DEVICE_FILE_FAILED: {
    happened: 'The list of devices {path} cannot be read or written: {reason}.',
    fix: 'Check that the folder exists and belongs to you.',
  },
  DEVICE_USER_INVALID: {
    happened: '"{user}" cannot be the name of a device.',
    fix: 'Use 1 to 64 letters, digits, dots, hyphens or underscores.',
  },
  DEVICE_EXISTS: {
    happened: 'There is a device "{user}" already.',
    fix: 'Remove it first to give it another secret, or choose another name.',
  },
  DEVICE_UNKNOWN: {
    happened: 'There is no device "{user}".',
    fix: 'See the devices there are with "forebond device list".',
  },
  DEVICE_FILTER_INVALID: {
    happened: 'The topic filter "{filter}" cannot be used to {verb}: {reason}.',
    fix: 'Write MQTT filters: + is a whole level, # the whole last level.',
  },
  DEVICE_SECRET_UNUSABLE: {
    happened: 'The secret on standard input cannot be used: {reason}.',
    fix: 'Send one line of 16 to 1,024 bytes, or leave --secret-stdin out to have a secret made.',
  },
  CSV_ENCODING: {
    happened: '{path} is not text in UTF-8 or UTF-16.',
    fix: 'Save it as CSV in UTF-8, or in UTF-16 with a byte-order mark.',
  },
  CSV_HEADER: {
    happened: 'The first line of {path} is no header of recorded data: {problem}.',
    fix: 'Begin with "time,signal,value" or with "time" and the signals, comma, semicolon or tab between.',
  },
  CSV_NEEDS_TIMEZONE: {
    happened: 'The time "{text}" in line {line} of {path} is local, and nobody said where.',
    fix: 'Name the time zone of the recording, as --timezone Europe/Dublin.',
  },
  CSV_TIMEZONE_UNKNOWN: {
    happened: '"{timezone}" is no time zone.',
    fix: 'Write its IANA name, as Europe/Dublin.',
  },
  CSV_BAD_ROWS: {
    happened:
      '{bad} of the {rows} rows of {path} cannot be read, the first in line {line}: {problem}.',
    fix: 'Mend them, or allow as many with --bad-rows {bad}.',
  },
  REPLAY_NOTHING_THERE: {
    happened: 'There is no file or folder {path}.',
    fix: 'Name a CSV file or a data folder with --from.',
  },
  REPLAY_NOTHING_KNOWN: {
    happened: 'No row of {path} names a measured signal of {site}.',
    fix: 'Name signals as line/station/signal, as the site file has them.',
  },
  RUN_NEEDS_OWN_TIMES: {
    happened: '{signal} in {path} has no time of its own, and --clock samples lives by them.',
    fix: 'Give its payload a kind json with a time pointer, or run by the wall clock.',
  },
} as const satisfies Record<string, ErrorEntry>;

export type ErrorCode = keyof typeof errorCatalogue;

const fill = (text: string, facts: Readonly<Record<string, string | number>>): string =>
  text.replace(/\{(\w+)\}/g, (_, name: string) => {
    const fact = facts[name];
    if (fact === undefined) throw new Error(`an error needs the fact "${name}"`);
    return String(fact);
  });

export class AgentError extends Error {
  readonly code: ErrorCode;
  readonly fix: string;

  constructor(
    code: ErrorCode,
    facts: Readonly<Record<string, string | number>> = {},
    cause?: unknown,
  ) {
    super(fill(errorCatalogue[code].happened, facts), cause === undefined ? undefined : { cause });
    this.name = 'AgentError';
    this.code = code;
    this.fix = fill(errorCatalogue[code].fix, facts);
  }
}

/** The disk refused, and it may be asked again; no fault of the agent's own. */
export const isDiskRefusal = (error: unknown): error is AgentError =>
  error instanceof AgentError && refusals.includes(error.code);

const refusals: readonly ErrorCode[] = [
  'STORE_DISK_FULL',
  'STORE_DISK_FAILED',
  'STORE_DAMAGED',
  'STORE_TAKEN_AWAY',
  'STORE_TWO_AGENTS',
];
