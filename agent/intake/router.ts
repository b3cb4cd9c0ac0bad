/**
 * From a topic to the signals it feeds.
 *
 * Exact topics are known from the plan; wildcard ones are found by a tree of filters the first
 * time and remembered. An instance of a wildcard that the plan does not know yet is offered to
 * `discover`, which may lay out a new plan on the spot.
 */
import type { Binding } from '#rules/plan/binding.ts';
import type { ColdJunction } from '#rules/plan/sensor.ts';
import type { Target } from './arrival.ts';
import type { IntakeCause } from './cause.ts';
import { type Decode, decoderFor } from './decode.ts';
import { SignalMemory } from './signal-memory.ts';
import { FilterTree, fitsFilter, hasWildcard, instanceNamed } from './topic-filter.ts';

/**
 * Offers an instance nobody knows yet: `id` of the binding, the instance's name, and the topic
 * whose it is from here on. Gives the plan index of its new signal, or null where it may not have
 * one (the limit is reached). It may call `replan` before it returns.
 */
export type Discover = (id: string, instance: string, topic: string) => number | null;
/** The topic that took a known instance first, as the record says; null where it does not. */
export type OwnerOf = (id: string, instance: string) => string | null;

export interface RouterPorts {
  readonly discover: Discover;
  readonly ownerOf?: OwnerOf;
  /** Hears whose a known instance is, where `ownerOf` does not know; as `discover`, it may replan. */
  readonly claim?: Discover;
}

/** A topic that feeds nothing because another's place has its name. */
export interface Taken {
  readonly topic: string;
  readonly owner: string;
  /** Of the binding. */
  readonly id: string;
  readonly instance: string;
}

export interface RouterLimits {
  readonly routesMax: number;
  readonly refusedTopicsMax: number;
  readonly recentTimesMax: number;
}

export interface DecodedTarget extends Target {
  readonly decode: Decode;
}

/** Where a topic leads; with a refusal where one of its wildcards took no new instance. */
export interface Route {
  readonly targets: readonly DecodedTarget[];
  readonly refusals: readonly IntakeCause[];
}

const nowhere: Route = { targets: [], refusals: [] };

/** A signal's name in what is remembered: its id, and the instance of a wildcard. */
const keyOf = (id: string, instance: string): string =>
  instance === '' ? id : `${id}\n${instance}`;

function coldJunctionOf({ sensor }: Binding): Extract<ColdJunction, { kind: 'signal' }> | null {
  if (sensor?.kind !== 'thermocouple' || sensor.coldJunction.kind === 'fixed') return null;
  return sensor.coldJunction;
}

/** A message may bring a thermocouple and its cold junction: the latter is read first. */
const inOrder = (targets: readonly DecodedTarget[]): readonly DecodedTarget[] =>
  targets.some(({ beside }) => beside !== null)
    ? targets.toSorted((a, b) => Number(a.beside !== null) - Number(b.beside !== null))
    : targets;

interface Wildcard {
  readonly binding: Binding;
  readonly decode: Decode;
}

export class Router {
  readonly #limits: RouterLimits;
  readonly #ports: RouterPorts;
  /** What is remembered of each signal, by its key; kept over a new plan. */
  #memories = new Map<string, SignalMemory>();
  /** The topic that took an instance first, by the instance's key. */
  #owners = new Map<string, string>();
  #taken: Taken[] = [];
  #exact = new Map<string, DecodedTarget[]>();
  #filters = new FilterTree<Wildcard>();
  #instances = new Map<string, DecodedTarget>();
  #routes = new Map<string, Route>();
  #bySignal: (DecodedTarget | undefined)[] = [];
  #generation = 0;

  constructor(bindings: readonly Binding[], ports: RouterPorts, limits: RouterLimits) {
    this.#limits = limits;
    this.#ports = ports;
    this.replan(bindings);
  }

  /**
   * From here on these bindings hold; what is remembered of a signal stays with its name. Throws
   * RangeError, and leaves all as it was, on a pointer that is none or an exact topic without signal.
   */
  replan(bindings: readonly Binding[]): void {
    const decoders = bindings.map((binding) => {
      if (!hasWildcard(binding.filter) && binding.signal === null) {
        throw new RangeError(`the topic ${binding.filter} feeds no signal`);
      }
      return decoderFor(binding.payload, binding.hasOwnTime);
    });
    const memoriesBefore = this.#memories;
    const ownersBefore = this.#owners;
    this.#generation += 1;
    this.#memories = new Map();
    this.#owners = new Map();
    this.#exact = new Map();
    this.#filters = new FilterTree();
    this.#instances = new Map();
    this.#routes = new Map();
    this.#bySignal = [];
    const keep = (key: string): void => {
      const memory = memoriesBefore.get(key);
      if (memory !== undefined) this.#memories.set(key, memory);
    };
    const keepOwner = ({ id, filter }: Binding, name: string): void => {
      const owner = this.#ports.ownerOf?.(id, name) ?? ownersBefore.get(keyOf(id, name));
      // Under another filter nobody would ever speak for it again.
      if (owner !== undefined && fitsFilter(filter, owner))
        this.#owners.set(keyOf(id, name), owner);
    };
    for (const binding of bindings) {
      if (binding.signal !== null) {
        keep(binding.id);
        continue;
      }
      for (const name of binding.instances.keys()) {
        keep(keyOf(binding.id, name));
        keepOwner(binding, name);
      }
    }
    this.#taken = this.#taken.filter(
      ({ id, instance, owner, topic }) =>
        this.#owners.get(keyOf(id, instance)) === owner &&
        bindings.some((each) => each.id === id && fitsFilter(each.filter, topic)),
    );
    bindings.forEach((binding, i) => {
      const decode = decoders[i]!;
      if (binding.signal !== null) {
        const target = this.#newTarget(binding, decode, '', binding.signal);
        const sharing = this.#exact.get(binding.filter);
        if (sharing === undefined) this.#exact.set(binding.filter, [target]);
        else sharing.push(target);
        return;
      }
      this.#filters.add(binding.filter, { binding, decode });
      for (const [name, signal] of binding.instances)
        this.#instances.set(
          keyOf(binding.id, name),
          this.#newTarget(binding, decode, name, signal),
        );
    });
  }

  /** Where a topic leads; both lists empty where nobody bound it. */
  route(topic: string): Route {
    return this.#routes.get(topic) ?? this.#find(topic);
  }

  /** The first so many. */
  get taken(): readonly Taken[] {
    return this.#taken;
  }

  /** The target of a plan index; undefined for signals no message feeds. */
  targetOf(signal: number): DecodedTarget | undefined {
    return this.#bySignal[signal];
  }

  #newTarget(binding: Binding, decode: Decode, instance: string, signal: number): DecodedTarget {
    const memory = this.#memoryOf(keyOf(binding.id, instance));
    const coldJunction = coldJunctionOf(binding);
    const beside =
      coldJunction === null
        ? null
        : this.#memoryOf(keyOf(coldJunction.id, coldJunction.ofInstance ? instance : ''));
    const id = instance === '' ? binding.id : `${binding.id}-${instance}`;
    const target = { id, binding, decode, signal, memory, beside };
    this.#bySignal[signal] = target;
    return target;
  }

  /** Of a signal that may not have spoken yet. */
  #memoryOf(key: string): SignalMemory {
    let memory = this.#memories.get(key);
    if (memory === undefined) {
      memory = new SignalMemory(this.#limits.recentTimesMax);
      this.#memories.set(key, memory);
    }
    return memory;
  }

  #find(topic: string): Route {
    const route = this.#lookUp(topic);
    if (route !== nowhere && this.#routes.size < this.#limits.routesMax) {
      this.#routes.set(topic, route);
    }
    return route;
  }

  #lookUp(topic: string): Route {
    // A discovery may lay out a new plan; what was found by the old one is then looked up anew.
    // Each makes one instance known, so a try for every wildcard and one more is enough.
    for (let triesLeft = this.#filters.match(topic).length; triesLeft >= 0; triesLeft -= 1) {
      const generation = this.#generation;
      const exact = this.#exact.get(topic);
      const wildcards = this.#filters.match(topic);
      if (exact === undefined && wildcards.length === 0) return nowhere;
      const targets = exact === undefined ? [] : [...exact];
      const refusals: IntakeCause[] = [];
      for (const wildcard of wildcards) {
        const found = this.#instance(wildcard, topic);
        if (this.#generation !== generation) break;
        if (typeof found === 'string') refusals.push(found);
        else targets.push(found);
      }
      if (this.#generation === generation) return { targets: inOrder(targets), refusals };
    }
    return { targets: [], refusals: ['instance-refused'] };
  }

  /** The signal of a wildcard that a topic feeds, discovered where it is new; or why there is none. */
  #instance(wildcard: Wildcard, topic: string): DecodedTarget | IntakeCause {
    const { binding, decode } = wildcard;
    const name = instanceNamed(topic, binding.levels);
    if (name === null) return 'instance-name';
    const key = keyOf(binding.id, name);
    const owner = this.#owners.get(key);
    if (owner !== undefined && owner !== topic) {
      this.#noteTaken({ topic, owner, id: binding.id, instance: name });
      return 'instance-collision';
    }
    let target = this.#instances.get(key);
    if (target === undefined) {
      const generation = this.#generation;
      const signal = this.#ports.discover(binding.id, name, topic);
      if (signal === null) return 'instance-refused';
      if (this.#generation !== generation) {
        const known = this.#instances.get(key);
        if (known === undefined) return 'instance-refused';
        target = known;
      } else {
        target = this.#newTarget(binding, decode, name, signal);
        this.#instances.set(key, target);
      }
      this.#owners.set(key, topic);
      return target;
    }
    this.#owners.set(key, topic);
    if (owner === undefined) this.#ports.claim?.(binding.id, name, topic);
    return target;
  }

  #noteTaken(taken: Taken): void {
    const isKnown = this.#taken.some(({ topic, id }) => topic === taken.topic && id === taken.id);
    if (!isKnown && this.#taken.length < this.#limits.refusedTopicsMax) this.#taken.push(taken);
  }
}
