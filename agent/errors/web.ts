/** Errors of HTTP and the page. */
import type { ErrorEntry } from './entry.ts';

export const webErrors = {
  WEB_NOT_LOOPBACK: {
    happened: 'The page was asked to listen on {host}, where other machines can reach it.',
    fix: 'Listen on 127.0.0.1 or [::1]; or start with --people, and name an address of this machine or 0.0.0.0: the page then has TLS and asks who is there.',
  },
  WEB_NAMES_UNUSABLE: {
    happened: '"{name}" is no name under which this machine can be reached.',
    fix: 'Give --name with a host name or an address, at most 20 of them.',
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
    fix: 'Send fewer or shorter headers; only one cookie is needed, and only for who is signed in.',
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
  WEB_MARK_UNKNOWN: {
    happened: 'There is no mark "{mark}" at {station}.',
    fix: 'GET /api/marks lists them; a mark of your own stands under marks of its station in the site file.',
  },
  WEB_READING_NOT_BY_HAND: {
    happened: '{id} is not entered by hand: a sensor gives it, or it is worked out.',
    fix: 'To enter it, write by_hand: true for it in the site file, without topic and payload.',
  },
  WEB_READING_UNIT: {
    happened: '"{unit}" is no unit of {id}, which is read in {own}.',
    fix: 'Write the value in {own}, or in another unit of the same quantity.',
  },
  WEB_READING_RANGE: {
    happened: '{value} {unit} lies outside what {id} can be: {low} to {high} {kept}.',
    fix: 'See that value and unit are as the instrument shows them. The range stands in the site file.',
  },
  WEB_READING_AHEAD: {
    happened: 'The time of the reading cannot be right: {ahead}.',
    fix: 'Write when it was read, in milliseconds since 1970 (UTC), or leave the time out for now. Likely: {likely}.',
  },
  WEB_READING_KNOWN: {
    happened: 'The same reading of {id} at that time is kept already.',
    fix: 'Nothing need be done. Another reading needs the time at which it was read.',
  },
  WEB_READING_UNTIMED: {
    happened: 'The agent runs by the clock of its samples, and none has come yet.',
    fix: 'Enter it once the first sample has come.',
  },
  WEB_COMMAND_REFUSED: {
    happened: 'Nothing was changed: {why}.',
    fix: 'Read the present state with GET /api/alarms or /api/holds and decide again.',
  },
  TELLING_NO_WAY: {
    happened: 'There is no way by which you can be told.',
    fix: 'Let this phone take messages, or enter an e-mail address, and try again.',
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
} as const satisfies Record<string, ErrorEntry>;
