/** Engine time beside the wall clock: what does not fit is entered in the log. */
import type { ClockSource, EngineClock } from '../clock/engine-clock.ts';
import type { Intake } from '../intake/intake.ts';
import { limits } from '../limits.ts';
import type { OpenColumns } from '../store/columns.ts';
import type { LedgerBody } from '../store/contract.ts';
import type { Live } from '../turn/live.ts';
import { type ClockBook, stepRecord } from './clock-book.ts';

export interface ClockParts {
  readonly clock: EngineClock;
  readonly live: Live;
  readonly intake: Intake;
  readonly columns: OpenColumns;
  readonly clockBook: ClockBook;
  record(body: LedgerBody): void;
}

/** True where what comes is marked: engine time is ahead of the wall clock, or that cannot be right. */
export function enterClockStep(parts: ClockParts, source: ClockSource): boolean {
  const { clock, live, intake, columns } = parts;
  const step = clock.check();
  const inDoubt = clock.inDoubt || source.wallMs() < limits.earliestPlausibleMs;
  intake.setClockDoubt(inDoubt);
  const engine = live.running;
  if (step === null || engine === null) return inDoubt;
  live.settle();
  const from = engine.now;
  if (step.kind === 'ahead') {
    live.input({ kind: 'gap', judged: from + 1, fromMs: from, toMs: step.toMs });
    engine.advance(step.toMs);
  } else {
    live.input({ kind: 'rebase', judged: from + 1, deltaMs: step.deltaMs });
    engine.advance(from + 1);
    columns.rebase();
  }
  clock.set(engine.now);
  parts.record(stepRecord(step.kind, from, engine.now));
  parts.clockBook.note(from, engine.now);
  return inDoubt;
}
