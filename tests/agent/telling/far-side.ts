/** A channel that keeps what it was given: the phones and mailboxes of a test. */
import type { Channel, Delivery, Message, Target } from '#agent/notify/contract.ts';

export interface Sending {
  readonly at: number;
  readonly message: Message;
  readonly target: Target;
  readonly outcome: Delivery['outcome'];
  /** Which life of the agent sent it. */
  readonly life: number;
}

export class FarSide implements Channel {
  readonly name: Channel['name'];
  readonly sendings: Sending[] = [];
  life = 0;
  private readonly now: () => number;
  private readonly answer: (message: Message, target: Target) => Delivery;

  constructor(
    name: Channel['name'],
    now: () => number,
    answer: (message: Message, target: Target) => Delivery = () => ({ outcome: 'delivered' }),
  ) {
    this.name = name;
    this.now = now;
    this.answer = answer;
  }

  async send(message: Message, target: Target): Promise<Delivery> {
    const delivery = this.answer(message, target);
    const { outcome } = delivery;
    this.sendings.push({ at: this.now(), message, target, outcome, life: this.life });
    // The answer is a moment on its way: a kill may come before it.
    await Promise.resolve();
    return delivery;
  }

  get delivered(): Sending[] {
    return this.sendings.filter(({ outcome }) => outcome === 'delivered');
  }

  /** As text: minutes after `since`, kind, person, rule and step. */
  story(since: number): string[] {
    return this.delivered.map(({ at, message, target }) => {
      const minutes = Math.round((at - since) / 6_000) / 10;
      const [what = ''] = (message.occurrence ?? message.thread).split('@');
      return `${minutes} ${message.kind} ${target.person ?? target.address} ${what}`;
    });
  }
}
