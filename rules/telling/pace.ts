/** How soon the next step comes, and what waits for the end of the quiet hours. */
import type { Priority } from '../alarm/priority.ts';
import type { EpochMs } from '../signal/sample.ts';
import type { Chase } from './chase.ts';
import { escalateAfterMs, type TellingSettings } from './settings.ts';
import { nextAtMinute, wallTime } from './site-clock.ts';

/** Everyone was told and nobody answered: they are told again less and less often. Judgement. */
const everyoneAgainMsMin = 5 * 60_000;
const everyoneAgainMsMax = 4 * 3_600_000;
/** On call, the next, everyone. */
const rungsBeforeRepeats = 3;

/** After telling the rung before `rung`, how long until that one is told. */
export function againAfterMs(
  settings: TellingSettings,
  { priority, respondMs }: Pick<Chase, 'priority' | 'respondMs'>,
  rung: number,
): number {
  const afterMs = escalateAfterMs(settings, priority, respondMs);
  if (rung < rungsBeforeRepeats) return afterMs;
  const slowerMs = Math.max(afterMs, everyoneAgainMsMin) * 2 ** (rung - rungsBeforeRepeats);
  return Math.min(everyoneAgainMsMax, slowerMs);
}

/** When the quiet hours end that hold it back; null where nothing does. */
export function quietUntil(
  { quiet, timezone }: TellingSettings,
  priority: Priority,
  at: EpochMs,
): EpochMs | null {
  if (quiet === null || priority === 'high' || !quiet.priorities.includes(priority)) return null;
  const { fromMin, toMin } = quiet;
  const { minute } = wallTime(at, timezone);
  const within =
    fromMin < toMin ? fromMin <= minute && minute < toMin : minute >= fromMin || minute < toMin;
  return within ? nextAtMinute(at, toMin, timezone) : null;
}
