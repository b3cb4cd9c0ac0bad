/**
 * Logs what clients do wrong without letting them fill the log: each fault of each user once a
 * minute, then how often it came. Bounded in what it remembers.
 */
export interface DoorLog {
  info(facts: object, message: string): void;
  warn(facts: object, message: string): void;
}

export interface Teller {
  tell(fault: string, user: string | null, facts: object): void;
  /** One second has passed. */
  second(): void;
}

const windowS = 60;
const faultsMax = 1_000;

export function makeTeller(log: DoorLog): Teller {
  const counts = new Map<string, { fault: string; user: string | null; more: number }>();
  let seconds = 0;
  return {
    tell(fault, user, facts) {
      const key = `${fault} ${user}`;
      const known = counts.get(key);
      if (known !== undefined) {
        known.more++;
        return;
      }
      if (counts.size >= faultsMax) return;
      counts.set(key, { fault, user, more: 0 });
      log.warn({ user, ...facts }, fault);
    },
    second() {
      if (++seconds % windowS !== 0) return;
      for (const { fault, user, more } of counts.values()) {
        if (more > 0) log.warn({ user, more }, `${fault}, repeated`);
      }
      counts.clear();
    },
  };
}
