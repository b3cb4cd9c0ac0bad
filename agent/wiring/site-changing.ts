/**
 * The site changes while it is watched: a wildcard takes a value nobody knew, or people load another
 * site file. What stands goes on standing; what came before is in the log under the old plan.
 */
import type { PersonId } from '#rules/input.ts';
import type { Plan } from '#rules/plan/plan.ts';
import type { EpochMs } from '#rules/signal/sample.ts';
import type { Intake } from '../intake/intake.ts';
import type { RouterPorts } from '../intake/router.ts';
import { type SiteChanges, siteChanges } from '../site/changes.ts';
import type { SiteSource } from '../site/revision.ts';
import type { LedgerBody } from '../store/contract.ts';
import type { Store } from '../store/store.ts';
import type { Live } from '../turn/live.ts';
import type { Compiled, PlanBook } from './plan-book.ts';
import type { SampleBook } from './sample-book.ts';

export interface SiteChangingParts {
  readonly store: Store;
  readonly plans: PlanBook;
  readonly samples: SampleBook;
  readonly intake: () => Intake;
  readonly live: () => Live;
  readonly now: () => EpochMs;
  readonly record: (body: LedgerBody) => void;
}

export class SiteChanging {
  private readonly parts: SiteChangingParts;
  /** The plan that indices speak of. */
  laid: Plan;

  constructor(parts: SiteChangingParts) {
    this.parts = parts;
    this.laid = parts.plans.now.plan;
  }

  /** Whose the places of wildcards are, and what comes of a new one. */
  get wildcards(): RouterPorts {
    const discover: RouterPorts['discover'] = (...place) => this.discover(...place);
    return {
      discover,
      claim: discover,
      ownerOf: (id, instance) => this.parts.plans.ownerOf(id, instance),
    };
  }

  lay(plan: Plan): void {
    this.parts.samples.lay(plan);
    this.laid = plan;
  }

  /** The plan index of a signal of the site as it is now; -1 where it has none. */
  signalIndex(id: string): number {
    return this.laid.signals.findIndex((signal) => signal.id === id);
  }

  /** All that the disk could refuse of a change of plan; what counts is changed afterwards. */
  keep({ plan, text }: Compiled): void {
    this.parts.samples.introduce(plan);
    this.parts.store.keepSiteRevision(plan.revision, text);
  }

  adoptNow(by?: PersonId): void {
    const { plan } = this.parts.plans.now;
    this.parts.live().adopt(plan.revision, by);
    this.lay(plan);
  }

  /**
   * A wildcard took a value nobody knew: the site grows by a signal, and its rules with it. Or one
   * of which no record said whose it is: from here on it is said.
   */
  discover(id: string, instance: string, topic: string): number | null {
    this.parts.live().rowOpen();
    const compiled = this.parts.plans.withInstance(id, instance, topic, (grown) =>
      this.keep(grown),
    );
    if (compiled === null) return null;
    this.takeOn(compiled);
    return this.signalIndex(`${id}-${instance}`);
  }

  /**
   * Another site from here on; the ledger says who changed what. Throws SITE_TOO_LARGE,
   * STORE_SIGNAL_CHANGED, and where the disk refuses; then nothing has changed.
   */
  change(source: SiteSource, by: PersonId): SiteChanges {
    const { plans, now, record } = this.parts;
    const found = siteChanges(plans.source, source);
    if (found.changes.length === 0) return found;
    const before = plans.now.plan.revision;
    this.parts.live().rowOpen();
    const compiled = plans.withSource(source, (changed) => this.keep(changed));
    const after = compiled.plan.revision;
    record({ type: 'site-changed', at: now(), by, before, after, ...found });
    this.takeOn(compiled, by);
    return found;
  }

  private takeOn(compiled: Compiled, by?: PersonId): void {
    if (this.parts.live().running === null) this.lay(compiled.plan);
    else this.adoptNow(by);
    this.parts.intake().replan(compiled.bindings);
  }
}
