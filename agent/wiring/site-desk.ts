/**
 * The site file beside what runs: loaded when somebody asks, looked at now and then.
 *
 * Always true: a file with a fault changes nothing; the file alone changes nothing either, because a
 * half-saved one must not decide what is an alarm. That it says something else is told as health.
 */
import { statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { PersonId } from '#rules/input.ts';
import { counted } from '#rules/quantity/counted.ts';
import type { PlacedProblem } from '#rules/site/problem.ts';
import { FileError } from '../errors.ts';
import { type SiteChanges, siteChanges } from '../site/changes.ts';
import type { SiteReading } from '../site/read-site.ts';
import type { SiteSource } from '../site/revision.ts';

export interface SiteDeskParts {
  readonly file: string;
  readonly read: (file: string) => Promise<SiteReading>;
  readonly running: () => SiteSource;
  readonly change: (source: SiteSource, by: PersonId) => SiteChanges;
  /** A problem as one line for people. */
  readonly line: (problem: PlacedProblem) => string;
  readonly fault: (error: unknown) => void;
}

const lookEveryMs = 5_000;

export class SiteDesk {
  private readonly parts: SiteDeskParts;
  private timer: NodeJS.Timeout | null = null;
  private stamp = '';
  /** What is to be said of the file; null where it says what runs. */
  note: string | null = null;

  constructor(parts: SiteDeskParts) {
    this.parts = parts;
    this.stamp = this.stampNow();
  }

  start(): void {
    this.timer = setInterval(() => void this.look().catch(this.parts.fault), lookEveryMs);
  }

  stop(): void {
    if (this.timer !== null) clearInterval(this.timer);
  }

  /** Throws FileError, and what the change of a site throws; then nothing has changed. */
  async load(by: PersonId): Promise<SiteChanges> {
    const reading = await this.parts.read(this.parts.file);
    if (!reading.ok) throw this.wrong(reading);
    const changes = this.parts.change(reading.source, by);
    this.note = null;
    this.stamp = this.stampNow();
    return changes;
  }

  /** Reads the file again where it, a sheet or a file of own rules was written since. */
  async look(): Promise<void> {
    const stamp = this.stampNow();
    if (stamp === this.stamp) return;
    this.stamp = stamp;
    const reading = await this.parts.read(this.parts.file);
    this.note = reading.ok ? this.difference(reading.source) : faultyWords(reading);
  }

  private wrong({ problems, more }: SiteReading & { ok: false }): FileError {
    const lines = problems.map(this.parts.line);
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

const faultyWords = (reading: SiteReading & { ok: false }): string =>
  `The site file has ${counted(reading.problems.length + reading.more, 'problem')} and cannot be loaded; what runs goes on as it was.`;

function stampOf(path: string): string {
  const found = statSync(path, { throwIfNoEntry: false });
  return found === undefined ? '-' : `${found.mtimeMs}/${found.size}`;
}
