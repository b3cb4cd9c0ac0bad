/** What a snapshot holds, as bytes and back. */
import type { EngineState } from '#rules/engine/state.ts';
import type { Engine } from '#rules/engine.ts';
import type { SnapshotRow } from '../store/store-types.ts';

/** The state of a snapshot: the engine's, and how far the ledger was. */
export interface SavedState {
  readonly engine: EngineState;
  readonly ledgerId: number;
}

export const savedStateFormat = 1;

/** Throws RangeError on a format this does not know. */
export function savedState(snapshot: SnapshotRow): SavedState {
  if (snapshot.format !== savedStateFormat)
    throw new RangeError(`the snapshot has format ${snapshot.format}`);
  return JSON.parse(new TextDecoder().decode(snapshot.state)) as SavedState;
}

export const stateBytes = (engine: Engine, ledgerId: number): Uint8Array => {
  const saved: SavedState = { engine: engine.save(), ledgerId };
  return new TextEncoder().encode(JSON.stringify(saved));
};
