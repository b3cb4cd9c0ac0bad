/**
 * One JSON file of the data folder that the agent and commands on the box both change.
 *
 * Always true: it is replaced whole or not at all, by one process at a time, readable by the
 * agent's own account alone; a file that cannot be read is never taken for an empty one.
 */
import {
  closeSync,
  fsyncSync,
  openSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { dirname } from 'node:path';
import type { z } from 'zod';
import { AgentError } from '../errors.ts';
import { limits } from '../limits.ts';

const pauseMs = 10;
const pausing = new Int32Array(new SharedArrayBuffer(4));

const codeOf = (error: unknown): string =>
  error instanceof Error && 'code' in error ? String(error.code) : String(error);

export class KeptFile<T> {
  readonly path: string;
  private readonly schema: z.ZodType<T>;
  private readonly empty: T;
  private state = '';
  private kept: T;

  constructor(path: string, schema: z.ZodType<T>, empty: T) {
    this.path = path;
    this.schema = schema;
    this.empty = empty;
    this.kept = empty;
  }

  /** What it holds now; read again only where it changed. Throws PEOPLE_FILE_BROKEN, PEOPLE_FILE_FAILED. */
  read(): T {
    const state = this.stateNow();
    if (state === this.state) return this.kept;
    this.kept = this.load();
    this.state = state;
    return this.kept;
  }

  /** Changes it, durably. What `change` throws leaves it as it was. */
  change(change: (held: T) => T): T {
    const fresh = `${this.path}.new`;
    const file = this.openFresh(fresh);
    try {
      const next = change(this.load());
      writeFileSync(file, `${JSON.stringify(next, null, 1)}\n`);
      fsyncSync(file);
      renameSync(fresh, this.path);
      this.syncFolder();
      this.kept = next;
      this.state = this.stateNow();
      return next;
    } catch (error) {
      rmSync(fresh, { force: true });
      throw error instanceof Error && 'errno' in error ? this.failed(error) : error;
    } finally {
      closeSync(file);
    }
  }

  private load(): T {
    let text: string;
    try {
      text = readFileSync(this.path, 'utf8');
    } catch (error) {
      if (codeOf(error) === 'ENOENT') return this.empty;
      throw this.failed(error);
    }
    try {
      return this.schema.parse(JSON.parse(text));
    } catch (error) {
      // The library's own words would repeat what stands in the file.
      const reason = error instanceof SyntaxError ? 'it is no JSON' : 'it is not as it is written';
      throw new AgentError('PEOPLE_FILE_BROKEN', { path: this.path, reason });
    }
  }

  private stateNow(): string {
    try {
      const { ino, size, mtimeNs, ctimeNs } = statSync(this.path, { bigint: true });
      return `${ino} ${size} ${mtimeNs} ${ctimeNs}`;
    } catch (error) {
      if (codeOf(error) === 'ENOENT') return 'none';
      throw this.failed(error);
    }
  }

  /** Only one process can create it, so it is the lock too. */
  private openFresh(fresh: string): number {
    for (let waitedMs = 0; ; waitedMs += pauseMs) {
      try {
        return openSync(fresh, 'wx', 0o600);
      } catch (error) {
        if (codeOf(error) !== 'EEXIST' || waitedMs >= limits.peopleFileWaitMs)
          throw this.failed(error);
      }
      const held = statSync(fresh, { throwIfNoEntry: false });
      if (held !== undefined && Date.now() - held.mtimeMs > limits.peopleFileDeadMs)
        rmSync(fresh, { force: true });
      else Atomics.wait(pausing, 0, 0, pauseMs);
    }
  }

  /** A rename is on disk once its folder is. */
  private syncFolder(): void {
    const folder = openSync(dirname(this.path), 'r');
    try {
      fsyncSync(folder);
    } finally {
      closeSync(folder);
    }
  }

  private failed(error: unknown): AgentError {
    return new AgentError('PEOPLE_FILE_FAILED', { path: this.path, reason: codeOf(error) }, error);
  }
}
