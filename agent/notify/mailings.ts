/**
 * Mails that come by the clock, made and addressed when they are due.
 *
 * Always true: that one was due and the mail itself are written down in one turn, so that a kill
 * makes neither two nor none; of what fell due while the agent was stopped one comes, the latest;
 * before the first start, or before
 * it was written so, nothing was due. The outbox sends them, as anything else.
 */
import type { EpochMs } from '#rules/signal/sample.ts';
import { lastDue, type Mailing, type MailingKind, mailingKinds } from '#rules/telling/mailings.ts';
import { whoIsOn } from '#rules/telling/rota.ts';
import type { Target, TellablePerson } from './contract.ts';
import { unitOf } from './ladder.ts';
import type { Said, TellerParts } from './teller-parts.ts';
import { type Mailed, mailedRow } from './telling-rows.ts';

/** The clock on the wall is looked at so often; a mail that could not be made is tried again then. */
const lookEveryMs = 10_000;

type Parts = Pick<
  TellerParts,
  'mailings' | 'report' | 'persons' | 'rota' | 'write' | 'record' | 'now'
>;
type Post = (
  thread: string,
  kind: MailingKind,
  target: Target,
  language: 'en' | 'de',
  said: Said,
) => void;

export class Mailings {
  private readonly parts: Parts;
  private readonly post: Post;
  private mailed: Mailed;
  private lookedMs: EpochMs = Number.NEGATIVE_INFINITY;

  /** `mailed`: what the last run had seen to. */
  constructor(parts: Parts, mailed: Mailed, post: Post) {
    this.parts = parts;
    this.mailed = mailed;
    this.post = post;
  }

  look(now: EpochMs): void {
    if (Math.abs(now - this.lookedMs) < lookEveryMs) return;
    this.lookedMs = now;
    // Where nobody has a mailbox yet, nothing has been due yet.
    if (Object.keys(this.mailed).length === 0 && !this.hasMailboxes) return;
    const { timezone, of } = this.parts.mailings();
    for (const kind of mailingKinds) {
      const mailing = of[kind];
      if (mailing === null) continue;
      const dueMs = lastDue(mailing, timezone, now);
      const by = `${mailing.weekday ?? 'daily'} ${mailing.minute} ${timezone}`;
      const seenTo = this.mailed[kind];
      if (seenTo !== undefined && seenTo.by === by) {
        if (seenTo.dueMs >= dueMs) continue;
        const beforeMs = lastDue(mailing, timezone, dueMs - 1);
        if (!this.send(kind, mailing, dueMs, beforeMs)) continue;
      }
      this.mailed = { ...this.mailed, [kind]: { dueMs, by } };
      this.parts.write(mailedRow(this.mailed, now));
    }
  }

  private get hasMailboxes(): boolean {
    return this.parts.persons.list().some(({ addresses }) => addresses.email !== null);
  }

  /** False where it cannot be made now. */
  private send(kind: MailingKind, mailing: Mailing, dueMs: EpochMs, beforeMs: EpochMs): boolean {
    const { report, record } = this.parts;
    const thread = `${kind}@${dueMs}`;
    const causes: string[] = [];
    const people = this.addressed(mailing, causes);
    if (people.length === 0) {
      // Whoever named nobody has not asked for it.
      if (mailing.isAsked)
        record({ type: 'told-nobody', at: this.parts.now(), occurrence: thread, step: 0, causes });
      return true;
    }
    const said = new Map<'en' | 'de', Said>();
    for (const { language } of people) {
      const made = said.get(language) ?? report({ kind, dueMs, beforeMs, language });
      if (made === null) return false;
      said.set(language, made);
    }
    for (const { id, language, email } of people) {
      const target: Target = { person: id, channel: 'email', address: email };
      this.post(thread, kind, target, language, said.get(language)!);
    }
    return true;
  }

  private addressed({ to }: Mailing, causes: string[]) {
    const people = this.parts.persons.list();
    const named = to.flatMap((name) =>
      name.toLowerCase() === 'on-call'
        ? this.onCall(people, causes)
        : unitOf(name, people, causes, 'The site file'),
    );
    return [...new Map(named.map((person) => [person.id, person])).values()].flatMap(
      ({ id, name, language, addresses: { email } }) => {
        if (email !== null) return [{ id, language, email }];
        causes.push(`${name} has no e-mail address.`);
        return [];
      },
    );
  }

  /** Whoever the rota names now, for all stations. */
  private onCall(people: readonly TellablePerson[], causes: string[]): TellablePerson[] {
    const { who, causes: why } = whoIsOn(this.parts.rota(), this.parts.now(), '', null);
    causes.push(...why);
    if (who.length === 0) causes.push('The rota says nobody is on call now.');
    return who.flatMap((name) => unitOf(name, people, causes));
  }
}
