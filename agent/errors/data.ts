/** Errors of the demo line, listening, recorded data and running a site. */
import type { ErrorEntry } from './entry.ts';

export const dataErrors = {
  DEMO_FOLDER_TAKEN: {
    happened: '{path} holds something that the demo line did not make.',
    fix: 'Name an empty or new folder with --data; the demo never writes into a plant’s own.',
  },
  DEMO_FOLDER_MAKING: {
    happened: 'The demo folder {path} is being made by another start.',
    fix: 'Use that one, or name another folder with --data. If no other start runs, remove {making}.',
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
  SITE_TOO_LARGE: {
    happened: 'The site comes to {signals} and {rules}, more than one agent takes.',
    fix: 'Split it in two: one agent a line. What runs goes on as it was.',
  },
  SITE_FILE_WRONG: {
    happened: 'The site file has {problems}; the first: {first}',
    fix: 'Mend them (forebond check lists them all) and load it again. What runs goes on as it was.',
  },
  OWN_RULES_UNKNOWN: {
    happened: 'This site has no rules of its own in {file}.',
    fix: 'GET /api/own-rules lists the files; name one as the site file does.',
  },
  SITE_NOT_FROM_FILE: {
    happened: 'This agent does not run on a site file.',
    fix: 'Start it with forebond run --site FILE.',
  },
  RUN_NEEDS_OWN_TIMES: {
    happened: '{signal} in {path} has no time of its own, and --clock samples lives by them.',
    fix: 'Give its payload a kind json with a time pointer, or run by the wall clock.',
  },
} as const satisfies Record<string, ErrorEntry>;
