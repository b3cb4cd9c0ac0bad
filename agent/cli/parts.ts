/** What a command needs of the process that runs it. */
import type { SiteSource } from '../site/revision.ts';

export interface CliParts {
  /** One line to standard output, without its end. */
  readonly print: (line: string) => void;
  /** One line to standard error: what was passed over, and why. */
  readonly complain: (line: string) => void;
  readonly setExitCode: (code: number) => void;
  /** A sound site; null where it is not: every problem has been printed and the exit code set. */
  readonly siteOrExit: (file: string) => Promise<SiteSource | null>;
}
