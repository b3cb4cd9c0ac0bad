/**
 * The site as it is now, the values its wildcards took, and every revision the record names.
 */
import type { CompiledSite, Instances } from '#rules/plan/compile.ts';
import type { Plan } from '#rules/plan/plan.ts';
import { counted } from '#rules/quantity/counted.ts';
import { AgentError } from '../errors.ts';
import { fitsFilter } from '../intake/topic-filter.ts';
import { limits } from '../limits.ts';
import { type CallWatch, nobody } from '../site/extensions/watch.ts';
import {
  compileSource,
  type SiteSource,
  siteText,
  sourceOfText,
  type Topics,
} from '../site/revision.ts';
import type { SiteRevisionRow } from '../store/store-types.ts';

/** What wildcards took. */
export interface Places {
  readonly instances: Instances;
  readonly topics?: Topics;
}

export type Compiled = CompiledSite & { readonly text: string };

export interface RevisionReader {
  siteRevision(hash: string): SiteRevisionRow | null;
}

export class PlanBook {
  source: SiteSource;
  private readonly revisions: RevisionReader;
  private readonly plans = new Map<string, Plan>();
  private instances: Instances;
  private topics: Topics;
  private readonly watch: CallWatch;
  /** Another instance made the site too large: no further one is tried. */
  private full = false;
  now: Compiled;

  /**
   * `places` that this site no longer has are let go when it is compiled; `watch` looks on where
   * the site's own rules are called.
   */
  constructor(
    source: SiteSource,
    places: Places,
    revisions: RevisionReader,
    watch: CallWatch = nobody,
  ) {
    this.source = source;
    this.watch = watch;
    this.revisions = revisions;
    this.instances = places.instances;
    this.topics = places.topics ?? {};
    this.now = this.compile(this.instances);
    this.topics = topicsHeld(this.now.bindings, this.topics);
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
   * The site with one more instance of a wildcard, or one whose topic was not known, now `topic`'s;
   * null where it, or the site, has enough. `keep` is given it before it counts: what that throws
   * is thrown on, and all is as it was.
   */
  withInstance(
    base: string,
    instance: string,
    topic: string,
    keep: (grown: Compiled) => void = () => undefined,
  ): Compiled | null {
    const known = this.instances[base] ?? [];
    const isNew = !known.includes(instance);
    if (isNew && (this.full || known.length >= limits.wildcardInstancesMax)) return null;
    const instances = isNew ? { ...this.instances, [base]: [...known, instance] } : this.instances;
    const topics = { ...this.topics, [base]: { ...this.topics[base], [instance]: topic } };
    const compiled = this.compile(instances, this.source, topics);
    const isTooLarge =
      compiled.plan.signals.length > limits.signalsMax || compiled.rules.length > limits.rulesMax;
    if (isNew && isTooLarge) {
      this.full = true;
      this.plans.delete(compiled.plan.revision);
      return null;
    }
    keep(compiled);
    this.instances = instances;
    this.topics = topicsHeld(compiled.bindings, topics);
    this.now = compiled;
    return compiled;
  }

  /** The topic whose an instance is; null where no record says. */
  ownerOf(base: string, instance: string): string | null {
    return this.topics[base]?.[instance] ?? null;
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
    this.topics = topicsHeld(compiled.bindings, this.topics);
    this.full = false;
    this.now = compiled;
    return compiled;
  }

  private compile(
    instances: Instances,
    source = this.source,
    topics: Topics = this.topics,
  ): Compiled {
    const first = compileSource(source, instances, this.watch, topics);
    const held = topicsHeld(first.bindings, topics);
    const compiled =
      siteText(source, instances, held) === first.text
        ? first
        : compileSource(source, instances, this.watch, held);
    this.plans.set(compiled.plan.revision, compiled.plan);
    return compiled;
  }
}

export function planOfText(text: string, watch?: CallWatch): Plan {
  const { source, instances, topics } = sourceOfText(text);
  return compileSource(source, instances, watch, topics).plan;
}

/** Those that a wildcard of the site can still hear: another filter gives the names free. */
const topicsHeld = (bindings: Compiled['bindings'], topics: Topics): Topics =>
  Object.fromEntries(
    Object.entries(topics).flatMap(([id, each]) => {
      const filter = bindings.find((binding) => binding.id === id)?.filter ?? '';
      const held = Object.entries(each).filter(([, topic]) => fitsFilter(filter, topic));
      return held.length === 0 ? [] : [[id, Object.fromEntries(held)]];
    }),
  );
