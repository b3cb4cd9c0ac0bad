/**
 * Every error the agent tells people about: a stable code, what happened, and how to mend it.
 * The words stand in errors/, by subject; docs/errors.md holds exactly this catalogue; a test
 * compares them.
 */
import { channelErrors } from './errors/channels.ts';
import { dataErrors } from './errors/data.ts';
import { doorErrors } from './errors/door.ts';
import type { ErrorEntry } from './errors/entry.ts';
import { peopleErrors } from './errors/people.ts';
import { storeErrors } from './errors/store.ts';
import { webErrors } from './errors/web.ts';

export type { ErrorEntry } from './errors/entry.ts';

export const errorCatalogue = {
  ...storeErrors,
  ...webErrors,
  ...doorErrors,
  ...dataErrors,
  ...channelErrors,
  ...peopleErrors,
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

/** A file of the user's that cannot be taken, with every fault of it. */
export class FileError extends AgentError {
  /** As `FILE:LINE:COLUMN path: what is wrong. fix`. */
  readonly problems: readonly string[];

  constructor(
    code: ErrorCode,
    facts: Readonly<Record<string, string | number>>,
    problems: readonly string[],
  ) {
    super(code, facts);
    this.problems = problems;
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
