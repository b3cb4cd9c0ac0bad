/** What the core is handed. */
import type { ClockSource } from '../clock/engine-clock.ts';
import type { SiteSource } from '../site/revision.ts';
import type { Store } from '../store/store.ts';
import type { TurnNews } from '../turn/ports.ts';
import type { Core } from './core.ts';
import type { TellingOptions } from './telling.ts';

export interface CoreOptions {
  readonly store: Store;
  readonly source: SiteSource;
  readonly mode: 'wall' | 'samples';
  readonly clock: ClockSource;
  readonly version: string;
  /** All signals are sealed together this often; rows nobody waits for are committed this often. */
  readonly sealEveryMs: number;
  readonly lazyCommitMs?: number;
  readonly tell: (news: TurnNews) => void;
  /** Absent where nobody is called. */
  readonly telling?: (core: Core) => TellingOptions;
  readonly warn: (facts: object, message: string) => void;
}
