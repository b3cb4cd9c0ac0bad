/**
 * The site file beside what runs: loaded when somebody asks, looked at now and then.
 *
 * Always true: a file with a fault changes nothing; the file alone changes nothing either, because a
 * half-saved one must not decide what is an alarm. That it says something else is told as health.
 * Where the agent had to start on what was accepted last, because the file had a fault, the file is
 * what people want to run: it is taken up by itself once it is whole and has stopped changing.
 */
import { statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { PersonId } from '#rules/input.ts';
import { counted } from '#rules/quantity/counted.ts';
import type { PlacedProblem } from '#rules/site/problem.ts';
import { AgentError, FileError } from '../errors.ts';
import { type SiteChanges, siteChanges } from '../site/changes.ts';
import type { SiteReading } from '../site/read-site.ts';
import { type SiteSource, siteText } from '../site/revision.ts';
import type { LedgerBody } from '../store/contract.ts';

/** What is wrong with a site file, each problem as one line for people. */
export interface FileFault {
  readonly lines: readonly string[];
  /** How many more there are. */
  readonly more: number;
}

/** A file that could not be taken at a start, and the revision that runs instead. */
export interface RefusedFile extends FileFault {
  readonly revision: string;
}

export interface SiteDeskParts {
  readonly file: string;
  readonly read: (file: string) => Promise<SiteReading>;
  readonly running: () => SiteSource;
  readonly change: (source: SiteSource, by: PersonId) => SiteChanges;
  /** A problem as one line for people. */
  readonly line: (problem: PlacedProblem) => string;
  /** null where the agent started on the file. */
  readonly refused: RefusedFile | null;
  readonly record: (body: LedgerBody) => void;
  readonly fault: (error: unknown) => void;
}

const lookEveryMs = 5_000;
/** Whoever wrote the file did so on the box itself. */
const atTheBox = 'box';

export class SiteDesk {
  private readonly parts: SiteDeskParts;
  private stamp = '';
  private looking = false;
  /** What the file said at the last look, where it was whole. */
  private lastText: string | null = null;
  /** What is to be said of the file; null where it says what runs. */
  note: string | null = null;
  /** Why the file cannot be taken, while what was accepted last runs in its place; null else. */
  unusable: string | null;

  constructor(parts: SiteDeskParts) {
    this.parts = parts;
    this.stamp = this.stampNow();
    this.unusable = parts.refused === null ? null : faultWords(parts.refused);
  }

  /** Gives what ends it. */
  start(): () => void {
    const { refused, record, fault } = this.parts;
    if (refused !== null)
      record({
        type: 'site-file-refused',
        at: Date.now(),
        revision: refused.revision,
        words: faultWords(refused),
        problems: refused.lines.slice(0, problemsRecordedMax),
      });
    const timer = setInterval(() => void this.look().catch(fault), lookEveryMs);
    return () => clearInterval(timer);
  }

  /** Throws FileError, and what the change of a site throws; then nothing has changed. */
  async load(by: PersonId): Promise<SiteChanges> {
    const reading = await this.parts.read(this.parts.file);
    if (!reading.ok) throw this.wrong(reading);
    return this.takeUp(reading.source, by);
  }

  /** Reads the file again where it, a sheet or a file of own rules was written since. */
  async look(): Promise<void> {
    if (this.looking) return;
    this.looking = true;
    try {
      await (this.unusable === null ? this.lookForChange() : this.lookForWhole());
    } finally {
      this.looking = false;
    }
  }

  private async lookForChange(): Promise<void> {
    const stamp = this.stampNow();
    if (stamp === this.stamp) return;
    this.stamp = stamp;
    const reading = await this.parts.read(this.parts.file);
    this.note = reading.ok ? this.difference(reading.source) : faultyWords(reading);
  }

  /** Each time: which sheets belong to a file that cannot be read nobody knows. */
  private async lookForWhole(): Promise<void> {
    const { read, file, running } = this.parts;
    const reading = await read(file);
    // Somebody asked for it meanwhile.
    if (this.unusable === null) return;
    const { lastText } = this;
    this.lastText = null;
    if (!reading.ok) {
      this.unusable = faultWords(this.faultOf(reading));
      return;
    }
    const { source } = reading;
    const [named, name] = [source.site.site, running().site.site];
    if (named !== name) {
      this.unusable = otherSiteWords(named, name);
      return;
    }
    const text = siteText(source, {});
    // One that is still being written may be sound by chance.
    if (text === lastText) this.takeUpAlone(source);
    else this.lastText = text;
  }

  private takeUpAlone(source: SiteSource): void {
    try {
      this.takeUp(source, atTheBox);
    } catch (error) {
      if (!(error instanceof AgentError)) throw error;
      const words = `${error.message} ${error.fix}`;
      this.unusable = faultWords({ lines: [words], more: 0 });
    }
  }

  private takeUp(source: SiteSource, by: PersonId): SiteChanges {
    const changes = this.parts.change(source, by);
    if (this.unusable !== null)
      this.parts.record({ type: 'site-file-taken-up', at: Date.now(), by });
    this.unusable = null;
    this.note = null;
    this.stamp = this.stampNow();
    return changes;
  }

  private faultOf({ problems, more }: SiteReading & { ok: false }): FileFault {
    return { lines: problems.map(this.parts.line), more };
  }

  private wrong(reading: SiteReading & { ok: false }): FileError {
    const { lines, more } = this.faultOf(reading);
    const facts = { problems: counted(lines.length + more, 'problem'), first: lines[0] ?? '' };
    return new FileError('SITE_FILE_WRONG', facts, lines);
  }

  private difference(source: SiteSource): string | null {
    const { changes, more } = siteChanges(this.parts.running(), source);
    if (changes.length === 0) return null;
    return `The site file differs from what runs in ${counted(changes.length + more, 'setting')}. Load it, or undo the change.`;
  }

  private stampNow(): string {
    const { file, running } = this.parts;
    const { materials = {}, extensions = [] } = running().site;
    const beside = [...Object.values(materials), ...extensions];
    return [file, ...beside.map((each) => join(dirname(file), each))].map(stampOf).join();
  }
}

/** The ledger needs the way to mend it, not each line of a file that is no site. */
const problemsRecordedMax = 20;

/** What a start on what was accepted last says wherever people look. */
export function faultWords({ lines, more }: FileFault): string {
  const others = lines.length + more - 1;
  const also = others > 0 ? ` And ${counted(others, 'more problem')}.` : '';
  return `The site file cannot be taken: ${lines[0] ?? ''}${also} ${standInWords}`;
}

const otherSiteWords = (named: string, running: string): string =>
  `The site file is of another site: it says ${JSON.stringify(named)}, and this is ${JSON.stringify(running)}. ${standInWords}`;

const standInWords =
  'The site as it was accepted last goes on being watched. Mend the file; it is taken up by itself once it is whole.';

const faultyWords = (reading: SiteReading & { ok: false }): string =>
  `The site file has ${counted(reading.problems.length + reading.more, 'problem')} and cannot be loaded; what runs goes on as it was.`;

function stampOf(path: string): string {
  const found = statSync(path, { throwIfNoEntry: false });
  return found === undefined ? '-' : `${found.mtimeMs}/${found.size}`;
}
