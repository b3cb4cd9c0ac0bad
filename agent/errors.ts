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
  STORE_NOT_A_STORE: {
    happened: '{path} is not a Forebond store.',
    fix: 'Name the data folder with --data, or move that file away to begin a new store.',
  },
  STORE_NEWER: {
    happened: '{path} was written by a newer Forebond (schema {found}, this one knows {known}).',
    fix: 'Install that version or a later one; an older one never opens a newer store.',
  },
  STORE_LOCKED: {
    happened: 'Another agent holds the data folder {path}.',
    fix: 'Stop it first, or give this one another folder with --data.',
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
