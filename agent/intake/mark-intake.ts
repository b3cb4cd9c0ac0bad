/**
 * From an MQTT message to marks: a scanner at a gate, a contact at a lid.
 *
 * Always true: nothing a device sends makes it throw; what cannot be read is counted, handed to
 * `refuse` with the reason, and says nothing. A retained message without a time of its own says
 * nothing about when, and is passed over.
 */
import { itemFault } from '#rules/hold/item.ts';
import type { MarkCommand } from '#rules/input.ts';
import type { MarkBinding } from '#rules/plan/card.ts';
import type { EpochMs } from '#rules/signal/sample.ts';
import { isAbsent, timeOfJson } from './decode.ts';
import { Message, type MessageLimits } from './message.ts';
import { parsePointer, valueAt } from './pointer.ts';
import type { RefusalCause } from './refused.ts';

export type SaidMark = Omit<MarkCommand, 'judged'>;

export interface MarkCounters {
  said: number;
  unreadable: number;
  retained: number;
}

/** Told of each mark that cannot be read; `message` holds its payload until the next one. */
export type RefuseMark = (binding: MarkBinding, cause: RefusalCause, message: Message) => void;

interface Read {
  readonly item: string | null;
  readonly at: EpochMs | null;
}

export class MarkIntake {
  readonly counters: MarkCounters = { said: 0, unreadable: 0, retained: 0 };
  private readonly bindings: () => readonly MarkBinding[];
  private readonly itemCharsMax: number;
  private readonly message: Message;
  private readonly refuse: RefuseMark;
  private laid: readonly MarkBinding[] | null = null;
  private byTopic = new Map<string, MarkBinding[]>();

  /** `bindings`: those of the site as it is now. */
  constructor(
    bindings: () => readonly MarkBinding[],
    limits: MessageLimits & { readonly itemCharsMax: number },
    refuse: RefuseMark = () => undefined,
  ) {
    this.refuse = refuse;
    this.bindings = bindings;
    this.itemCharsMax = limits.itemCharsMax;
    this.message = new Message(limits);
  }

  /** Whether a topic says a mark at all. */
  knows(topic: string): boolean {
    return this.of(topic) !== undefined;
  }

  take(topic: string, payload: Uint8Array, retained: boolean): readonly SaidMark[] {
    const bindings = this.of(topic);
    if (bindings === undefined) return [];
    this.message.load(payload);
    return bindings.flatMap((binding) => {
      const read = this.read(binding);
      if (typeof read === 'string') {
        this.counters.unreadable += 1;
        this.refuse(binding, read, this.message);
        return [];
      }
      if (retained && read.at === null) {
        this.counters.retained += 1;
        return [];
      }
      this.counters.said += 1;
      return [saidBy(binding, read, topic)];
    });
  }

  private of(topic: string): readonly MarkBinding[] | undefined {
    const bindings = this.bindings();
    if (bindings !== this.laid) {
      this.laid = bindings;
      this.byTopic = new Map();
      for (const binding of bindings)
        this.byTopic.set(binding.topic, [...(this.byTopic.get(binding.topic) ?? []), binding]);
    }
    return this.byTopic.get(topic);
  }

  /** The reason where the payload cannot be read as promised. */
  private read({ payload, what }: MarkBinding): Read | RefusalCause {
    if (payload.kind === 'plain') {
      if (what === null) return { item: null, at: null };
      const text = this.message.text();
      return text === null ? (this.message.cause ?? 'not-utf8') : this.itemOf(text, null);
    }
    const root = this.message.json();
    if (this.message.cause !== null) return this.message.cause;
    let at: EpochMs | null = null;
    if (payload.time !== undefined) {
      const time = found(payload.time, root);
      at = timeOfJson(time, payload.time_format);
      if (Number.isNaN(at)) return isAbsent(time) ? 'no-time' : 'time-unreadable';
    }
    if (what === null) return { item: null, at };
    const item = payload.item === undefined ? undefined : found(payload.item, root);
    if (isAbsent(item)) return 'no-item';
    if (typeof item !== 'string' && typeof item !== 'number') return 'item-unreadable';
    return this.itemOf(String(item), at);
  }

  private itemOf(text: string, at: EpochMs | null): Read | RefusalCause {
    const item = text.trim();
    if (item.length === 0) return 'no-item';
    const sound =
      item.length <= this.itemCharsMax && item.isWellFormed() && itemFault(item) === null;
    return sound ? { item, at } : 'item-unreadable';
  }
}

function found(pointer: string, root: unknown): unknown {
  const parsed = parsePointer(pointer);
  return parsed === null ? undefined : valueAt(parsed, root);
}

const saidBy = (binding: MarkBinding, { item, at }: Read, topic: string): SaidMark => ({
  kind: 'command',
  verb: 'mark',
  station: binding.station,
  mark: binding.mark,
  by: `topic:${topic}`,
  ...(item === null ? {} : { item }),
  ...(at === null ? {} : { at }),
});
