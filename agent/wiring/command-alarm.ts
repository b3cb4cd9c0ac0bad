/** What people do to an alarm, answered once it is on disk. */
import type { AlarmState } from '#rules/alarm/lifecycle.ts';
import type { Occurrence } from '../alarms/occurrence.ts';
import { guarding } from '../people/rights.ts';
import type { AlarmAnswer, AlarmCommand } from '../web/ports.ts';
import { acknowledgedBefore } from './acknowledged-before.ts';
import { askedNote, askedNow } from './asked-now.ts';
import { refusal } from './command-hold.ts';
import type { Core } from './core.ts';

/** `known`: an occurrence by its id. */
export async function commandAlarm(
  core: Core,
  command: AlarmCommand,
  known: (id: string) => Occurrence | null,
  nowMs: () => number,
): Promise<AlarmAnswer> {
  const { verb, occurrence, by, reason, forMs, oneShot } = command;
  const stateNow = (): AlarmState | null => stateOf(core, occurrence, known);
  if (stateNow() === null) return { outcome: 'unknown' };
  const no = roleRefusal(core, command);
  if (no !== null) return { outcome: 'refused', why: no };
  const asked = verb === 'pass-on' ? askedNow(core, occurrence, by) : null;
  const effects = await core.live.command({
    kind: 'command',
    verb,
    occurrence,
    by,
    ...(reason === undefined ? {} : { reason }),
    ...(forMs === undefined ? {} : { untilMs: nowMs() + forMs }),
    ...(oneShot === undefined ? {} : { oneShot }),
  });
  const why = refusal(effects);
  const state = stateNow() ?? 'normal';
  const alreadySo = verb === 'acknowledge' && state.endsWith('acknowledged') && !unseen(state);
  if (why !== null && !alreadySo) return { outcome: 'refused', why };
  if (why === null && asked !== null)
    return { outcome: 'accepted', state, note: askedNote(asked), asked };
  if (why === null) return { outcome: 'accepted', state };
  return {
    outcome: 'accepted',
    state,
    note: acknowledgedBefore(core, command, known(occurrence), nowMs()),
  };
}

/** What is highly managed not everybody may close, nor take out of service while it stands. */
function roleRefusal(core: Core, { verb, occurrence, role }: AlarmCommand): string | null {
  if (role === undefined || (role !== null && guarding.includes(role))) return null;
  if (verb !== 'reset' && verb !== 'remove-from-service') return null;
  const cut = occurrence.lastIndexOf('@');
  const id = cut < 0 ? occurrence : occurrence.slice(0, cut);
  const index = core.plans.now.plan.rules.findIndex((rule) => rule.id === id);
  if (core.plans.now.plan.rules[index]?.class.highlyManaged !== true) return null;
  const beneath = core.live.running?.present.alarms.list[index]?.beneath ?? 'normal';
  if (verb === 'reset')
    return 'it is highly managed, so handled with special care: ehs or an administrator resets it';
  return beneath === 'normal'
    ? null
    : 'it is highly managed, so handled with special care, and stands: ehs or an administrator takes it out of service';
}

/** Of an occurrence; or of the alarm of a rule, by the rule's id. */
function stateOf(
  core: Core,
  id: string,
  known: (id: string) => Occurrence | null,
): AlarmState | null {
  const index = core.plans.now.plan.rules.findIndex((rule) => rule.id === id);
  if (index < 0) return known(id)?.state ?? null;
  return core.live.running?.present.alarms.list[index]?.state ?? 'normal';
}

const unseen = (state: string): boolean => state.includes('unacknowledged');
