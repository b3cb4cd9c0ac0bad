/**
 * Sealed samples that turned out to be damaged when somebody read them: each told once, and kept
 * in sight of health until the agent is started again.
 */
import type { EpochMs } from '#rules/signal/sample.ts';
import { limits } from '../limits.ts';

export interface DamagedSamples {
  readonly signal: string;
  readonly fromMs: EpochMs;
  readonly toMs: EpochMs;
  readonly reason: string;
}

const namedMax = 5;

export class DamageBook {
  private readonly tell: (found: DamagedSamples) => void;
  private readonly known = new Map<string, DamagedSamples>();

  constructor(tell: (found: DamagedSamples) => void) {
    this.tell = tell;
  }

  note(found: DamagedSamples): void {
    const key = `${found.signal} ${found.fromMs} ${found.toMs}`;
    if (this.known.has(key) || this.known.size >= limits.damagedChunksMax) return;
    this.known.set(key, found);
    this.tell(found);
  }

  /** Sentences for people: the first few by name, the rest counted. */
  words(): string[] {
    const found = [...this.known.values()];
    const named = found.slice(0, namedMax).map(sentence);
    const more = found.length - named.length;
    return more === 0
      ? named
      : [
          ...named,
          more === 1
            ? 'One more stretch of samples is damaged.'
            : `${more} more stretches of samples are damaged.`,
        ];
  }
}

const sentence = ({ signal, fromMs, toMs, reason }: DamagedSamples): string => {
  const span = `${new Date(fromMs).toISOString()} to ${new Date(toMs).toISOString()}`;
  return `Stored samples of ${signal}, ${span}, are damaged (${reason}).`;
};
