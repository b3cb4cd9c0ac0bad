/** A time on the command line: RFC 3339, or epoch milliseconds. */
import { InvalidArgumentError } from 'commander';
import type { EpochMs } from '#rules/signal/sample.ts';

export function timeArgument(text: string): EpochMs {
  const ms = /^\d+$/.test(text) ? Number(text) : Date.parse(text);
  const isTime = /^\d+$/.test(text) || /^\d{4}-\d{2}-\d{2}(T.*(Z|[+-]\d{2}:\d{2}))?$/.test(text);
  if (!isTime || !Number.isFinite(ms))
    throw new InvalidArgumentError('write a time as 2026-01-31T14:00:00Z, or epoch milliseconds.');
  return ms;
}
