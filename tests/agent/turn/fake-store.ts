/** A disk for the turn's tests: keeps each turn, or refuses as it is told to. */
import { AgentError } from '#agent/errors.ts';
import type { InputRow, LedgerBody, Turn } from '#agent/store/contract.ts';
import type { TurnStore } from '#agent/turn/ports.ts';

export class FakeStore implements TurnStore {
  lastSeq = 0;
  readonly turns: Turn[] = [];
  /** What the next commits throw; null to keep them. */
  refusal: Error | null = null;
  attempts = 0;
  relieved = 0;
  /** What happened, in order; tests add to it. */
  readonly story: string[];
  private ledgerId = 0;

  constructor(story: string[] = []) {
    this.story = story;
  }

  commit(turn: Turn): number {
    this.attempts += 1;
    if (this.refusal !== null) throw this.refusal;
    // As the real one: numbers ascend.
    for (const { seq } of turn.inputs) {
      if (seq <= this.lastSeq) throw new RangeError(`input ${seq} does not follow ${this.lastSeq}`);
      this.lastSeq = seq;
    }
    this.turns.push({ ...turn, inputs: [...turn.inputs], ledger: [...turn.ledger] });
    this.ledgerId += turn.ledger.length;
    this.story.push('kept');
    return this.ledgerId;
  }

  relieve(): void {
    this.relieved += 1;
  }

  get rows(): InputRow[] {
    return this.turns.flatMap(({ inputs }) => inputs);
  }
  get ledger(): LedgerBody[] {
    return this.turns.flatMap(({ ledger }) => ledger);
  }
}

export const full = (): AgentError => new AgentError('STORE_DISK_FULL', { path: 'data' });
export const failed = (): AgentError =>
  new AgentError('STORE_DISK_FAILED', { path: 'data', reason: 'EIO' });
