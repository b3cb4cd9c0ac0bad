/**
 * How the clock of this box was set lately: from the ledger at a start, then as it is found out.
 *
 * Always true: a step is spoken of for `clockSetToldMs` by the clock as it is now, however often the
 * agent is started meanwhile.
 */
import { spanText } from '#rules/alarm/say.ts';
import type { EpochMs } from '#rules/signal/sample.ts';
import { limits } from '../limits.ts';
import type { LedgerBody } from '../store/contract.ts';
import type { StoreReader } from '../store/store-types.ts';

/** What the clock showed before and after; engine time. */
interface Step {
  readonly from: EpochMs;
  readonly to: EpochMs;
}

const stepType = 'clock';

export const stepRecord = (step: 'ahead' | 'back', from: EpochMs, to: EpochMs): LedgerBody => ({
  type: stepType,
  step,
  from,
  to,
});

export class ClockBook {
  private steps: Step[];

  /** Looks through the newest `lookedBackRecordsMax` records. */
  constructor(read: Pick<StoreReader, 'ledgerAfter'>, lastLedgerId: number) {
    this.steps = [...read.ledgerAfter(Math.max(0, lastLedgerId - limits.lookedBackRecordsMax))]
      .filter(({ record }) => record.includes(`"type":"${stepType}"`))
      .map(({ record }) => JSON.parse(record) as Record<string, unknown>)
      .flatMap(({ type, from, to }) =>
        type === stepType && typeof from === 'number' && typeof to === 'number'
          ? [{ from, to }]
          : [],
      );
  }

  note(from: EpochMs, to: EpochMs): void {
    this.steps.push({ from, to });
  }

  /** For people; null where the clock was not set lately. */
  words(now: EpochMs): string | null {
    const last = this.steps.at(-1);
    if (last === undefined || now - last.to >= limits.clockSetToldMs) {
      this.steps = [];
      return null;
    }
    // What was set before a step back may have a time ahead of it.
    this.steps = this.steps.filter(({ to }) => now - to < limits.clockSetToldMs);
    const { from, to } = last;
    const way = to > from ? 'ahead' : 'back';
    const at = new Date(to).toISOString().replace(/\.\d+/, '');
    const slept = to > from ? ', unless the box slept' : '';
    const often = this.steps.length;
    const more = often === 1 ? '' : ` It was set ${often} times within a day.`;
    return `The clock of this box was set ${way} by ${spanText(Math.abs(to - from))} at ${at}${slept}; times before and after do not fit. Check its time source.${more}`;
  }
}
