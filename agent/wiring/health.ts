/**
 * The agent's own health in the words of NE 107, part by part, each with why and what to do.
 */
import { counted } from '#rules/quantity/counted.ts';
import type { Health } from '../web/contract.ts';
import type { HealthParts } from '../web/ports.ts';

type Condition = Health['condition'];

export interface PartHealth {
  readonly condition: Condition;
  readonly note?: string;
}

export interface HealthFacts {
  readonly version: string;
  readonly uptimeS: number;
  /** Why the disk refuses; null while it does not. */
  readonly diskRefusal: { readonly message: string; readonly fix: string } | null;
  /** Why it refuses what is done besides the record: the high water, the reserve, clearing away. */
  readonly choreRefusal: { readonly message: string; readonly fix: string } | null;
  /** Null where it cannot be measured. */
  readonly diskFreeBytes: number | null;
  readonly diskFreeBytesMin: number;
  readonly clockInDoubt: boolean;
  /** That it was set lately, in a sentence; null where it was not. */
  readonly clockSet: string | null;
  readonly sealingFailed: string | null;
  /** What opening the store found wrong, in sentences. */
  readonly findings: readonly string[];
  /** Some of what was kept is lost. */
  readonly recordLost: boolean;
  readonly doorOpen: boolean;
  /** Why an alarm would reach nobody, or not whom it should; null where it would. */
  readonly tellingNote: string | null;
  /** Why the list of devices is not the one the door goes by; null where it is. */
  readonly devicesProblem: string | null;
  /** Files of the site's own rules that are off, in sentences. */
  readonly rulesOff: readonly string[];
  /** What is to be said of the site file; null where it says what runs. */
  readonly siteNote: string | null;
  /** Why the file could not be taken at the start, and what runs instead; null where it could. */
  readonly siteUnusable: string | null;
  /** Milliseconds since the engine last took a turn. */
  readonly turnAgeMs: number;
  readonly unjudgedRules: number;
  /** Signals that rules need and that have never been heard. */
  readonly unheardSignals: readonly string[];
  /** Signals whose calibration is overdue. */
  readonly overdueCalibrations: readonly string[];
  /** Topics whose message that came last was refused. */
  readonly refusedTopics: readonly string[];
}

const good: PartHealth = { condition: 'good' };
const turnAgeMsMax = 5_000;

export function healthParts(facts: HealthFacts): HealthParts {
  const parts: Record<string, PartHealth> = {
    engine:
      facts.turnAgeMs > turnAgeMsMax
        ? { condition: 'failure', note: `No turn for ${Math.round(facts.turnAgeMs / 1_000)} s.` }
        : good,
    disk: disk(facts),
    record: record(facts),
    clock: clock(facts),
    mqtt: mqtt(facts),
    site: site(facts),
    rules:
      facts.rulesOff.length === 0
        ? good
        : { condition: 'out-of-specification', note: facts.rulesOff.join(' ') },
    telling:
      facts.tellingNote === null
        ? good
        : { condition: 'out-of-specification', note: facts.tellingNote },
    sensors: sensors(facts),
  };
  return {
    version: facts.version,
    uptime_s: facts.uptimeS,
    parts: Object.fromEntries(Object.entries(parts).map(([name, p]) => [name, p.condition])),
    notes: Object.fromEntries(
      Object.entries(parts).flatMap(([name, { note }]) =>
        note === undefined ? [] : [[name, note]],
      ),
    ),
  };
}

function site({ siteNote, siteUnusable }: HealthFacts): PartHealth {
  if (siteUnusable !== null) return { condition: 'out-of-specification', note: siteUnusable };
  return siteNote === null ? good : { condition: 'maintenance-required', note: siteNote };
}

function clock({ clockInDoubt, clockSet }: HealthFacts): PartHealth {
  if (clockInDoubt) {
    const doubt =
      'The system clock is behind or was set back; samples are marked. Check the time source.';
    return { condition: 'out-of-specification', note: doubt };
  }
  return clockSet === null ? good : { condition: 'maintenance-required', note: clockSet };
}

function sensors(facts: HealthFacts): PartHealth {
  const { unjudgedRules, unheardSignals, overdueCalibrations, refusedTopics } = facts;
  const notes = [
    ...(unheardSignals.length > 0
      ? [
          `Never heard: ${few(unheardSignals)}; what needs them is not watched. GET /api/coverage says where they should come.`,
        ]
      : []),
    ...(unjudgedRules > 0
      ? [
          `${counted(unjudgedRules, 'rule')} cannot be judged: a reading that is needed is lost or not usable.`,
        ]
      : []),
    ...(refusedTopics.length > 0
      ? [`Messages that cannot be used come on ${few(refusedTopics)}; GET /api/refused says why.`]
      : []),
    ...(overdueCalibrations.length > 0
      ? [`Calibration is overdue for ${few(overdueCalibrations)}: their readings are uncertain.`]
      : []),
  ];
  return notes.length === 0 ? good : { condition: 'maintenance-required', note: notes.join(' ') };
}

/** What came from outside is printed without what could steer a terminal. */
function few(names: readonly string[]): string {
  const most = 3;
  const shown = names.slice(0, most).map((name) => name.replace(/\p{C}/gu, '·'));
  const more = names.length - shown.length;
  return more > 0 ? `${shown.join(', ')} and ${more} more` : shown.join(', ');
}

function mqtt({ doorOpen, devicesProblem }: HealthFacts): PartHealth {
  if (!doorOpen) return { condition: 'failure', note: 'The MQTT door is not open.' };
  return devicesProblem === null
    ? good
    : { condition: 'maintenance-required', note: devicesProblem };
}

function disk(facts: HealthFacts): PartHealth {
  if (facts.diskRefusal !== null)
    return {
      condition: 'failure',
      note: `${facts.diskRefusal.message} ${facts.diskRefusal.fix}`,
    };
  if (facts.choreRefusal !== null)
    return {
      condition: 'maintenance-required',
      note: `${facts.choreRefusal.message} ${facts.choreRefusal.fix}`,
    };
  if (facts.diskFreeBytes !== null && facts.diskFreeBytes < facts.diskFreeBytesMin)
    return {
      condition: 'maintenance-required',
      note: `Only ${Math.round(facts.diskFreeBytes / 1_048_576)} MB free; make room on the disk.`,
    };
  return good;
}

function record(facts: HealthFacts): PartHealth {
  const notes = [
    ...facts.findings,
    ...(facts.sealingFailed === null ? [] : [`Sealing failed: ${facts.sealingFailed}`]),
  ];
  if (notes.length === 0) return good;
  const condition = facts.recordLost ? 'out-of-specification' : 'maintenance-required';
  return { condition, note: notes.join(' ') };
}
