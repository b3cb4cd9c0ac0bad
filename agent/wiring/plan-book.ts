/**
 * The site as it is now, the values its wildcards took, and every revision the record names.
 */
import type { CompiledSite, Instances } from '#rules/plan/compile.ts';
import type { Plan } from '#rules/plan/plan.ts';
import { limits } from '../limits.ts';
import { compileSource, type SiteSource, sourceOfText } from '../site/revision.ts';
import type { SiteRevisionRow } from '../store/store-types.ts';

export type Compiled = CompiledSite & { readonly text: string };

export interface RevisionReader {
  siteRevision(hash: string): SiteRevisionRow | null;
}

export class PlanBook {
  readonly source: SiteSource;
  private readonly revisions: RevisionReader;
  private readonly plans = new Map<string, Plan>();
  private instances: Instances;
  now: Compiled;

  /** `instances` that this site no longer has are let go when it is compiled. */
  constructor(source: SiteSource, instances: Instances, revisions: RevisionReader) {
    this.source = source;
    this.revisions = revisions;
    this.instances = instances;
    this.now = this.compile(instances);
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
    const plan = planOfText(row.text);
    this.plans.set(revision, plan);
    return plan;
  }

  /** The site with one more instance of a wildcard; null where it has enough of them. */
  withInstance(base: string, instance: string): Compiled | null {
    const known = this.instances[base] ?? [];
    if (known.length >= limits.wildcardInstancesMax) return null;
    this.instances = { ...this.instances, [base]: [...known, instance] };
    this.now = this.compile(this.instances);
    return this.now;
  }

  private compile(instances: Instances): Compiled {
    const compiled = compileSource(this.source, instances);
    this.plans.set(compiled.plan.revision, compiled.plan);
    return compiled;
  }
}

export function planOfText(text: string): Plan {
  const { source, instances } = sourceOfText(text);
  return compileSource(source, instances).plan;
}
