/** How a sensor was compared with a reference: the line it gives, and until when it holds. */
import { withoutDust } from '../quantity/quantity.ts';
import { dateMs } from '../signal/instant-text.ts';
import type { EpochMs } from '../signal/sample.ts';
import type { SignalWritten } from '../site/signal-schema.ts';
import type { CalibrationDates } from './calibration-dates.ts';
import type { Path, ReadingDraft, Report } from './draft.ts';
import { startOfDayMs } from './start-of-day.ts';

export function compileCalibration(
  written: SignalWritten,
  path: Path,
  report: Report,
): Pick<ReadingDraft, 'slope' | 'intercept'> {
  if (written.calibration === undefined) return { slope: 1, intercept: 0 };
  const [[true1, read1], [true2, read2]] = written.calibration;
  const slope = (true2 - true1) / (read2 - read1);
  if (Number.isFinite(slope) && slope > 0)
    return { slope, intercept: withoutDust(true1 - slope * read1) };
  report({
    path: [...path, 'calibration'],
    problem:
      read1 === read2
        ? 'both points were read at the same value'
        : 'the reading falls where the truth rises, or does not move',
    fix: 'Write two points well apart, each [true, read], as [[0.0, 0.2], [100.0, 99.7]].',
  });
  return { slope: 1, intercept: 0 };
}

/** null where nobody said when it was calibrated. A calibration holds through its last day. */
export function compileCalibrationDates(
  written: SignalWritten,
  timezone: string,
  path: Path,
  report: Report,
): CalibrationDates | null {
  const { calibrated, calibrate_every: every } = written;
  if (calibrated === undefined) {
    if (every !== undefined)
      report({
        path: [...path, 'calibrate_every'],
        problem: 'nobody said when it was calibrated last',
        fix: 'Give calibrated, the day on its certificate, as 2026-03-31.',
        atKey: true,
      });
    return null;
  }
  const [year, month, day] = numbersOf(calibrated);
  if (Number.isNaN(dateMs(year, month, day)) || year < 1970) {
    report({
      path: [...path, 'calibrated'],
      problem: `there is no day ${calibrated}`,
      fix: 'Write the day on its certificate, as 2026-03-31.',
    });
    return null;
  }
  if (every === undefined) return { calibrated, lastDay: null, overdueFromMs: null };
  const [count = '', step] = every.split(/\s+/);
  const last =
    step === 'mo'
      ? monthsLater(year, month, day, Number(count))
      : daysLater(year, month, day, Number(count));
  const [lastYear, lastMonth, lastDate] = numbersOf(last);
  const next = numbersOf(daysLater(lastYear, lastMonth, lastDate, 1));
  return { calibrated, lastDay: last, overdueFromMs: startOfDayMs(dateMs(...next), timezone) };
}

const numbersOf = (date: string): [number, number, number] => {
  const [year = 0, month = 0, day = 0] = date.split('-').map(Number);
  return [year, month, day];
};

const dateOf = (ms: EpochMs): string => new Date(ms).toISOString().slice(0, 10);

const dayMs = 86_400_000;
const daysLater = (year: number, month: number, day: number, days: number): string =>
  dateOf(dateMs(year, month, day) + days * dayMs);

/** The same day of a later month, or its last: the 31st of January and a month is the 28th or 29th. */
function monthsLater(year: number, month: number, day: number, months: number): string {
  const later = year * 12 + (month - 1) + months;
  const [toYear, toMonth] = [Math.floor(later / 12), (later % 12) + 1];
  for (let to = day; ; to -= 1) {
    const ms = dateMs(toYear, toMonth, to);
    if (!Number.isNaN(ms)) return dateOf(ms);
  }
}
