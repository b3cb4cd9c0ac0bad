/**
 * What changes between beats: another plan, own rules that are on again.
 *
 * Always true: several plans may share one moment; nothing else may.
 */
import type { Input, PersonId } from '#rules/input.ts';
import type { EpochMs } from '#rules/signal/sample.ts';

/** Enters it at the engine's present moment where that is `shared`, else at the next that is free. */
type Enter = (shared: EpochMs | null, input: (judged: EpochMs) => Input) => EpochMs;

export class Changes {
  private readonly enter: Enter;
  private siteMoment: EpochMs | null = null;

  constructor(enter: Enter) {
    this.enter = enter;
  }

  adopt(revision: string, by?: PersonId): EpochMs {
    const who = by === undefined ? {} : { by };
    this.siteMoment = this.enter(this.siteMoment, (judged) => ({
      kind: 'site',
      judged,
      revision,
      ...who,
    }));
    return this.siteMoment;
  }

  switchOn(extension: string, by: PersonId): void {
    const on = { kind: 'extension', extension, off: null, turn: 0, by } as const;
    this.enter(null, (at) => ({ ...on, judged: at, at }));
    this.siteMoment = null;
  }
}

/**
 * The next moment that is free: behind all that was judged, before the open beat. `wallMs` null: by
 * the samples' own clock. `beat` 0: none is open.
 */
export function freeMoment(engineMs: EpochMs, wallMs: EpochMs | null, beat: EpochMs): EpochMs {
  if (wallMs === null) return engineMs + 1;
  // Work of this very turn may have taken the clock beyond the open beat.
  return Math.max(engineMs, beat > 0 ? Math.min(wallMs, beat - 2) : wallMs) + 1;
}
