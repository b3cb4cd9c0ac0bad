/**
 * Telling put together: alarms from the desk, rows into the journal, people and channels as handed in.
 */
import type { Effect } from '#rules/input.ts';
import type { RuleCard } from '#rules/plan/card.ts';
import type { AlarmToTell } from '#rules/telling/chase.ts';
import { mailingSettings } from '#rules/telling/mailings.ts';
import type { Rota } from '#rules/telling/rota.ts';
import { tellingSettings } from '#rules/telling/settings.ts';
import { isUnanswered } from '#rules/telling/what-it-means.ts';
import type { Channel, Persons, Target } from '../notify/contract.ts';
import { Teller } from '../notify/teller.ts';
import type { Said, Told } from '../notify/teller-parts.ts';
import type { Core } from './core.ts';
import type { Compiled } from './plan-book.ts';
import { reportSaid } from './report-message.ts';
import { withSpokenIds } from './spoken-ids.ts';
import { messageOf } from './telling-message.ts';

export interface TellingOptions {
  readonly persons: Persons;
  readonly channels: readonly Channel[];
  /** Names of the site's webhooks. */
  readonly webhooks: () => readonly string[];
  readonly rota: () => Rota;
  /** A target is no more. */
  readonly gone: (target: Target, cause: string) => void;
  /** False while the page is not there yet. */
  readonly ready: () => boolean;
  readonly fault: (error: unknown) => void;
}

/** null where nobody is called. */
export function tellingOf(
  core: Core,
  optionsOf: ((core: Core) => TellingOptions) | undefined,
): Teller | null {
  if (optionsOf === undefined) return null;
  const { persons, channels, webhooks, rota, gone, ready, fault } = optionsOf(core);
  return new Teller(
    {
      persons,
      channels: new Map(channels.map((channel) => [channel.name, channel])),
      webhooks,
      rota,
      gone,
      ready,
      fault,
      alarmOf: (effect) => alarmOf(core, effect),
      standing: () => standing(core),
      outranked: (occurrence) => outranked(core, occurrence),
      say: (saying) => {
        const said = withNames(messageOf(core, saying), persons.list());
        // Whoever mends rules looks them up in the site file by their ids.
        return saying.chase === null ? said : withSpokenIds(said, core.plans.now);
      },
      mailings: () => mailingSettings(core.plans.source.site.telling, core.plans.timezone),
      report: (report) => reportSaid(core, report),
      write: (row) => core.journal.outboxRow(row),
      record: (body) => core.record(body),
      told: (occurrence, told) => noteTold(core, occurrence, told),
      now: () => core.tellingNow,
    },
    settingsNow(core),
    core.store.read.waitingOutbox(),
  );
}

export const settingsNow = (core: Core): ReturnType<typeof tellingSettings> =>
  tellingSettings(core.plans.source.site.telling, core.plans.timezone);

const settingsOf = new WeakMap<Teller, Compiled>();

/** Ten times a second: steps that are due go into the next turn, what may be sent is sent. */
export function tendTelling(core: Core): void {
  const { telling, plans } = core;
  if (telling === null) return;
  if (settingsOf.get(telling) !== plans.now) {
    settingsOf.set(telling, plans.now);
    telling.set(settingsNow(core));
  }
  telling.look(core.tellingNow);
  telling.outbox.look();
}

const cards = new WeakMap<Compiled, Map<string, RuleCard>>();

function cardOf(compiled: Compiled, rule: string): RuleCard | null {
  const known = cards.get(compiled) ?? new Map(compiled.rules.map((card) => [card.id, card]));
  cards.set(compiled, known);
  return known.get(rule) ?? null;
}

function alarmOf(
  core: Core,
  { occurrence, rule, priority }: Extract<Effect, { kind: 'transition' }>,
): AlarmToTell | null {
  if (occurrence === null) return null;
  const card = cardOf(core.plans.now, rule);
  const [line = '', station = ''] = rule.split('/');
  return {
    occurrence,
    rule,
    station: `${line}/${station}`,
    hazard: card?.hazard ?? null,
    priority,
    highlyManaged: card?.class.highlyManaged ?? false,
    respondMs: card?.respondMs ?? null,
  };
}

/** Each alarm that stands and nobody has answered, as if it had just been raised. */
function standing(core: Core): Extract<Effect, { kind: 'transition' }>[] {
  return core.desk
    .open()
    .filter(({ state, supersededBy }) => isUnanswered(state) && supersededBy === null)
    .map(({ id, rule, signal, state, severity, priority, raised, evidence, nuisance }) => ({
      kind: 'transition',
      at: raised,
      judged: raised,
      rule,
      signal,
      occurrence: id,
      transition: 'raised',
      from: 'normal',
      to: state,
      severity,
      priority,
      evidence,
      ...(nuisance === undefined ? {} : { nuisance }),
    }));
}

/** A worse alarm about the same stands, which speaks for it. */
export function outranked(core: Core, occurrence: string): boolean {
  const alarms = core.live.running?.present.alarms;
  const index = alarms?.list.findIndex((alarm) => alarm.occurrence === occurrence) ?? -1;
  return index >= 0 && alarms!.outranked(index);
}

/** A sentence that says who put something on hold has the person's id; people know the name. */
function withNames(said: Said, people: readonly { id: string; name: string }[]): Said {
  const sentence = people.reduce((text, { id, name }) => text.replaceAll(id, name), said.sentence);
  return { ...said, sentence };
}

function noteTold(core: Core, occurrence: string, told: Told): void {
  const { at, person, to, channel, kind, outcome, cause } = told;
  const row = core.desk.told(occurrence, { at, person, to, channel, kind, outcome, cause });
  if (row === null) return;
  core.journal.entry({ ledger: null, occurrences: [row], holds: [] });
  core.toldOf(occurrence);
}
