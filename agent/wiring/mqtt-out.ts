/**
 * What the agent says by MQTT: the state of each alarm for stack lights and other machines, and that it
 * is alive. Retained, under `forebond/<site>/`, where no device may publish.
 *
 * Always true: an alarm's topic says what is on disk, or what people were told where the disk refuses;
 * the heartbeat goes on only while turns are taken, the record is kept and the door answers. Whoever
 * hears none by `next_by` knows that nobody watches.
 */
import type { EpochMs } from '#rules/signal/sample.ts';
import type { AlarmView } from '../web/contract.ts';
import type { ToldEvent } from '../web/ports.ts';

export interface MqttOutParts {
  readonly site: () => string;
  /** Settled once it is on its way to whoever listens. */
  readonly publish: (topic: string, payload: string) => Promise<void>;
  /** Alarms that are not over, for a door that has just been opened. */
  readonly standing: () => readonly AlarmView[];
  readonly now: () => EpochMs;
  /** Why it must not call itself alive; null while it may. */
  readonly ill: () => string | null;
  readonly failed: (error: unknown) => void;
  readonly everyMs: number;
}

/** As stack lights read it. Times are RFC 3339. */
export interface AlarmMessage {
  readonly state: AlarmView['state'];
  readonly priority: AlarmView['priority'];
  readonly safety_label: AlarmView['label']['word'];
  readonly sentence: string;
  readonly value: number | null;
  readonly limit: number | null;
  readonly unit: string;
  readonly since: string;
  readonly occurrence: string;
  /** Its signal is lost: nobody can tell whether it is over. */
  readonly judgeable: boolean;
}

/** So many beats may be missed before silence means something. */
const beatsMissedMax = 3;

export class MqttOut {
  private readonly parts: MqttOutParts;
  private timer: NodeJS.Timeout | null = null;
  /** In order: a topic must end with what was said last. */
  private last: Promise<void> = Promise.resolve();

  constructor(parts: MqttOutParts) {
    this.parts = parts;
  }

  start(): void {
    for (const alarm of this.parts.standing()) this.alarm(alarm);
    this.beat();
    this.timer = setInterval(() => this.beat(), this.parts.everyMs);
  }

  told(event: ToldEvent): void {
    // Who was told is no state of the alarm.
    if (event.event === 'alarm' && event.data.change !== 'told') this.alarm(event.data.alarm);
  }

  /** The signed head of the ledger, for somebody to keep elsewhere. */
  checkpoint(checkpoint: object): void {
    this.say('checkpoint', checkpoint);
  }

  /** The last word: it is going, and knows it. */
  async stop(): Promise<void> {
    if (this.timer !== null) clearInterval(this.timer);
    this.say('heartbeat', { alive: false, at: this.text(this.parts.now()) });
    await this.last;
  }

  private alarm(alarm: AlarmView): void {
    // An occurrence that another took the place of has nothing to say any more.
    if (alarm.superseded_by !== null) return;
    const rule = alarm.rule.split('/').at(-1)!;
    this.say(`${alarm.line}/${alarm.station}/alarm/${rule}`, messageOf(alarm));
  }

  private beat(): void {
    if (this.parts.ill() !== null) return;
    const at = this.parts.now();
    const nextBy = at + beatsMissedMax * this.parts.everyMs;
    this.say('heartbeat', { alive: true, at: this.text(at), next_by: this.text(nextBy) });
  }

  private say(topic: string, message: object): void {
    const whole = `forebond/${this.parts.site()}/${topic}`;
    this.last = this.last
      .then(() => this.parts.publish(whole, JSON.stringify(message)))
      .catch(this.parts.failed);
  }

  private text(at: EpochMs): string {
    return new Date(at).toISOString();
  }
}

/** It stands, or waits for somebody. */
export const isNotOver = ({ state }: AlarmView): boolean => state !== 'normal';

const messageOf = (alarm: AlarmView): AlarmMessage => ({
  state: alarm.state,
  priority: alarm.priority,
  safety_label: alarm.label.word,
  sentence: alarm.label.sentence,
  value: alarm.evidence.value,
  limit: alarm.evidence.limit,
  unit: alarm.evidence.unit,
  since: new Date(alarm.raised).toISOString(),
  occurrence: alarm.occurrence,
  judgeable: alarm.judgeable,
});
