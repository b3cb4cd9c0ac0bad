/** How the agent itself is: its health part by part and its own figures, gathered from what runs. */
import type { Door } from '#broker/door.ts';
import type { Coverage } from '#rules/plan/card.ts';
import type { EpochMs } from '#rules/signal/sample.ts';
import { isDiskRefusal } from '../errors.ts';
import { limits } from '../limits.ts';
import type { Store, StoreSizes } from '../store/store.ts';
import { version } from '../version.ts';
import type { Figure, HealthParts } from '../web/ports.ts';
import type { Core } from './core.ts';
import { overdueCalibrations } from './coverage-view.ts';
import type { DamageBook } from './damage-book.ts';
import { devicesWords } from './door-words.ts';
import { figures } from './figures.ts';
import { isLoss, recordWords } from './finding-words.ts';
import { healthParts } from './health.ts';
import { offNotes } from './own-rules-view.ts';
import type { SiteDesk } from './site-desk.ts';
import { tellingNote } from './telling-health.ts';
import type { Upkeep } from './upkeep.ts';
import { unheardSignals, unjudgedRules } from './watching.ts';

/** What runs, as far as it does: an agent that is starting has no door yet. */
export interface Running {
  readonly core: Core;
  readonly store: Store;
  readonly upkeep: Upkeep;
  readonly damage: DamageBook;
  readonly siteDesk: SiteDesk | null;
  readonly door: Door | null;
  readonly lockRemadeAt: number | null;
}

const startedAt = performance.now();

export function healthOf(running: Running): HealthParts {
  const { core, store, upkeep, damage, door, siteDesk } = running;
  return healthParts({
    version,
    uptimeS: Math.round((performance.now() - startedAt) / 1_000),
    diskRefusal: store.lost ?? core.journal.state.refusal,
    choreRefusal: upkeep.refused,
    diskFreeBytes: sizesOf(store)?.diskFreeBytes ?? null,
    diskFreeBytesMin: limits.freeBytesMin,
    clockInDoubt: core.clockInDoubt,
    clockSet: core.clockBook.words(nowOf(core)),
    sealingFailed: core.sealingFailed,
    findings: recordWords(store, damage, running.lockRemadeAt, core.begunAnew),
    recordLost: store.findings.some(isLoss) || store.setAside.length > 0 || core.begunAnew,
    doorOpen: door !== null,
    tellingNote: tellingNote(core),
    devicesProblem: devicesWords(door?.devicesProblem() ?? null),
    rulesOff: [...offNotes(core), ...offBySite(core.plans.now.coverage)],
    siteNote: siteDesk?.note ?? null,
    siteUnusable: siteDesk?.unusable ?? null,
    turnAgeMs: performance.now() - upkeep.lookedAt,
    unjudgedRules: unjudgedRules(core),
    unheardSignals: unheardSignals(core)
      .filter(({ because }) => because !== 'never-entered')
      .map(({ signal }) => signal),
    overdueCalibrations: overdueCalibrations(core.plans.now.coverage, nowOf(core)),
    refusedTopics: core.intake
      .refused()
      .filter(({ standing, messages }) => standing && isRecent(messages.at(-1)!.at, core))
      .map(({ topic }) => topic),
  });
}

/** Rules that keep people from harm and that the site file switches off. */
export const offBySite = ({ stations }: Coverage): string[] =>
  stations
    .flatMap(({ off }) => off)
    .filter(({ people }) => people)
    .map(
      ({ rule, reason, signedBy }) =>
        `Switched off by the site file: ${rule}, signed by ${signedBy ?? 'nobody named'}: ${reason.replace(/[.\s]+$/, '')}.`,
    );

const nowOf = ({ live, clock }: Core): EpochMs => live.engineNow ?? clock.now();

const isRecent = (at: EpochMs, core: Core): boolean => nowOf(core) - at < limits.refusedToldMs;

const turnAgeMsMax = 5_000;

/** Why it must not call itself alive: no turns, nothing kept, or no door. null while all is well. */
export function illness({ core, store, upkeep, door }: Running): string | null {
  if (performance.now() - upkeep.lookedAt > turnAgeMsMax) return 'no turn is taken';
  const refusal = store.lost ?? core.journal.state.refusal;
  if (refusal !== null) return refusal.message;
  return door === null ? 'the MQTT door is not open' : null;
}

export function figuresOf({ core, store, door }: Running): Figure[] {
  return figures({
    intake: core.intake,
    journal: core.journal.state,
    sizes: sizesOf(store),
    door: door?.counters ?? null,
    openOccurrences: core.desk.open().length,
    holds: core.desk.heldNow().length,
    samples: core.samples.cursor,
  });
}

/** Null where the folder is not there to be measured; who looks after it says so. */
function sizesOf(store: Store): StoreSizes | null {
  try {
    return store.sizes();
  } catch (error) {
    if (!isDiskRefusal(error)) throw error;
    return null;
  }
}
