/**
 * The site as it is now, the values its wildcards took, and every revision the record names.
 */
import type { CompiledSite, Instances } from '#rules/plan/compile.ts';
import type { Plan } from '#rules/plan/plan.ts';
import { counted } from '#rules/quantity/counted.ts';
import { AgentError } from '../errors.ts';
import { limits } from '../limits.ts';
import { type CallWatch, nobody } from '../site/extensions/watch.ts';
import { compileSource, type SiteSource, sourceOfText } from '../site/revision.ts';
import type { SiteRevisionRow } from '../store/store-types.ts';

export type Compiled = CompiledSite & { readonly text: string };

export interface RevisionReader {
  siteRevision(hash: string): SiteRevisionRow | null;
}

export class PlanBook {
  source: SiteSource;
  private readonly revisions: RevisionReader;
  private readonly plans = new Map<string, Plan>();
  private instances: Instances;
  private readonly watch: CallWatch;
  /** Another instance made the site too large: no further one is tried. */
  private full = false;
  now: Compiled;

  /**
   * `instances` that this site no longer has are let go when it is compiled; `watch` looks on where
   * the site's own rules are called.
   */
  constructor(
    source: SiteSource,
    instances: Instances,
    revisions: RevisionReader,
    watch: CallWatch = nobody,
  ) {
    this.source = source;
    this.watch = watch;
    this.revisions = revisions;
    this.instances = instances;
    this.now = this.compile(instances);
  }

  get name(): string {
    return this.source.site.site;
  }

  get timezone(): string {
    return this.source.site.timezone;
  }

  /** The plan of a revision, from the text the store keeps. Throws where nobody kept it. */
  planOf(revision: string): Plan {
    const known = this.plans.get(revision);
    if (known !== undefined) return known;
    const row = this.revisions.siteRevision(revision);
    if (row === null) throw new Error(`the record names a site revision ${revision} nobody kept`);
    const plan = planOfText(row.text, this.watch);
    this.plans.set(revision, plan);
    return plan;
  }

  /**
   * The site with one more instance of a wildcard; null where it, or the site, has enough. `keep`
   * is given it before it counts: what that throws is thrown on, and all is as it was.
   */
  withInstance(
    base: string,
    instance: string,
    keep: (grown: Compiled) => void = () => undefined,
  ): Compiled | null {
    const known = this.instances[base] ?? [];
    if (this.full || known.length >= limits.wildcardInstancesMax) return null;
    const instances = { ...this.instances, [base]: [...known, instance] };
    const compiled = this.compile(instances);
    this.full =
      compiled.plan.signals.length > limits.signalsMax || compiled.rules.length > limits.rulesMax;
    if (this.full) {
      this.plans.delete(compiled.plan.revision);
      return null;
    }
    keep(compiled);
    this.instances = instances;
    this.now = compiled;
    return compiled;
  }

  /**
   * Another site from here on, with the wildcard values known. `keep` is given it before it counts:
   * what that throws is thrown on, and all is as it was. Throws SITE_TOO_LARGE.
   */
  withSource(source: SiteSource, keep: (changed: Compiled) => void): Compiled {
    const compiled = this.compile(this.instances, source);
    const signals = compiled.plan.signals.length;
    const rules = compiled.rules.length;
    if (signals > limits.signalsMax || rules > limits.rulesMax)
      throw new AgentError('SITE_TOO_LARGE', {
        signals: counted(signals, 'signal'),
        rules: counted(rules, 'rule'),
      });
    keep(compiled);
    this.source = source;
    this.full = false;
    this.now = compiled;
    return compiled;
  }

  private compile(instances: Instances, source = this.source): Compiled {
    const compiled = compileSource(source, instances, this.watch);
    this.plans.set(compiled.plan.revision, compiled.plan);
    return compiled;
  }
}

export function planOfText(text: string, watch?: CallWatch): Plan {
  const { source, instances } = sourceOfText(text);
  return compileSource(source, instances, watch).plan;
}

/** The values wildcards took, as the newest of these revisions has them. */
export function lastInstances(revisions: readonly SiteRevisionRow[]): Instances {
  const newest = revisions.reduce<SiteRevisionRow | null>(
    (best, row) => (best === null || row.firstSeq >= best.firstSeq ? row : best),
    null,
  );
  return newest === null ? {} : sourceOfText(newest.text).instances;
}
