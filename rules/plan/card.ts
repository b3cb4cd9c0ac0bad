/** What people see of a rule: all of it, so that no setting and no reason is hidden. */
import type { Label } from '../alarm/label.ts';
import type { Priority } from '../alarm/priority.ts';
import type { HoldWhat } from '../hold/hold.ts';
import type { MarkPayloadWritten } from '../site/mark-schema.ts';
import type { Basis } from '../stations/station.ts';
import type { CalibrationDates } from './calibration-dates.ts';
import type { AlarmClass } from './plan.ts';
import type { RuleChange } from './weaker.ts';

/** Words of the contract. */
export type Readiness = 'armed' | 'armed-limit-unconfirmed' | 'not-armed';

export interface CardSetting {
  /** As in the site file: `low_low`. */
  readonly setting: string;
  /** As it is or would be written: "7 Cel"; null where nobody gave it. */
  readonly written: string | number | boolean | null;
  readonly basis: Basis;
  /** It came from where it must come from. */
  readonly confirmed: boolean;
}

/** What a placeholder of the label prints that the evidence does not hold. */
export type Fact =
  /** In the canonical unit; `K` is a difference. `written_unit`: the UCUM code it was written in. */
  | {
      readonly kind: 'quantity';
      readonly value: number;
      readonly unit: string;
      readonly written_unit?: string;
    }
  | { readonly kind: 'duration'; readonly ms: number }
  /** `german` is absent where it is the same in every language, or nobody translated it. */
  | { readonly kind: 'text'; readonly text: string; readonly german?: string };

/** A label whose sentence may be left to the rule's kind (`RuleKind.sentence`): then null. */
export type LabelTexts = Omit<Label, 'sentence' | 'word'> & { readonly sentence: string | null };

export type CardLabel = LabelTexts & {
  readonly word: Label['word'];
  /** The same in German, its do-nots whole sentences; what the site wrote stays as it is. */
  readonly german?: LabelTexts;
};

export interface RuleCard {
  /** `line/station/rule`. */
  readonly id: string;
  /** `line/station`. */
  readonly station: string;
  readonly kind: string;
  /** What the kind judges, in one sentence. */
  readonly summary: string;
  /** The signal it is about; where it judges marks alone, the first of them. */
  readonly signal: string;
  /** All signals it judges, that one first. */
  readonly signals: readonly string[];
  /** The marks it judges, in the order of their roles. */
  readonly marks: readonly string[];
  readonly settings: readonly CardSetting[];
  readonly readiness: Readiness;
  /** What must be entered before it arms, or before its limit is confirmed. */
  readonly needs: readonly string[];
  readonly label: CardLabel;
  readonly facts: Readonly<Record<string, Fact>>;
  /** By severity 1 and 2. */
  readonly priority: readonly [Priority, Priority];
  readonly class: AlarmClass;
  /** Time there is to act; null where nobody said. */
  readonly respondMs: number | null;
  /** The station's hazard it watches, or its own name where the site wrote it; null for sensor health. */
  readonly hazard: string | null;
  readonly hazardToPeople: boolean;
  /** Judged only while all of these hold. */
  readonly gates: readonly {
    readonly signal: string;
    /** Canonical; null where that side is free. */
    readonly low: number | null;
    readonly high: number | null;
  }[];
  readonly hold: { readonly what: HoldWhat; readonly item: string } | null;
  /** What the site file changes of a rule of the station: what stood there, what stands there now. */
  readonly changes: readonly RuleChange[];
  /** While any of these holds, nobody is told. */
  readonly suppress: readonly CardWhile[];
}

export interface CardWhile {
  readonly because: string;
  /** Who answers for it; null where nobody need. */
  readonly signedBy: string | null;
  /** As in the site file: a signal with its bounds, or a mark and the one that ends it. */
  readonly signal: string | null;
  readonly low: number | null;
  readonly high: number | null;
  readonly from: string | null;
  readonly until: string | null;
  readonly atMostMs: number | null;
}

/** What people may say happened at a station. */
export interface MarkCard {
  /** `line/station/mark`. */
  readonly id: string;
  readonly station: string;
  readonly name: string;
  /** What it happens to; null where it happens to the place itself. */
  readonly what: HoldWhat | null;
  readonly meaning: string;
  /** Who writes it down, as it follows “by”. */
  readonly byWhom: string;
  /** The topic by which a device says it; null where only people do. */
  readonly topic: string | null;
}

/** How messages become marks. */
export interface MarkBinding {
  /** `line/station`. */
  readonly station: string;
  readonly mark: string;
  readonly what: HoldWhat | null;
  /** An exact MQTT topic. */
  readonly topic: string;
  readonly payload: MarkPayloadWritten;
}

/** What is watched and what is not: the answer of GET /api/coverage. */
export interface Coverage {
  readonly stations: readonly StationCoverage[];
}

export interface WatchedHazard {
  readonly hazard: string;
  readonly words: string;
  readonly people: boolean;
  readonly rules: readonly string[];
  /** Marks without which nothing watches it: watched only as far as people write them down. */
  readonly marks: readonly string[];
}

export interface UnwatchedHazard {
  readonly hazard: string;
  readonly words: string;
  readonly people: boolean;
  /** Signals any one of which would let a rule watch it, with where the sensor belongs. */
  readonly missing: readonly {
    readonly signal: string;
    readonly meaning: string;
    readonly where: string;
  }[];
  /** Why it is unwatched, in a sentence. */
  readonly why: string;
}

/** By the site file. */
export interface SwitchedOffRule {
  /** `line/station/rule`. */
  readonly rule: string;
  readonly reason: string;
  /** Who answers for it; null where nobody need. */
  readonly signedBy: string | null;
  /** People can be hurt by what it would watch. */
  readonly people: boolean;
}

/** A rule for each place of a wildcard, none of which has been heard: it judges once one is. */
export interface WaitingRule {
  /** `line/station/rule`, without a place. */
  readonly rule: string;
  readonly hazard: string | null;
  readonly people: boolean;
  /** `line/station/signal`, without a place: those of which no place has been heard; one or more. */
  readonly signals: readonly string[];
}

export interface StationCoverage {
  readonly station: string;
  readonly kind: string;
  readonly watched: readonly WatchedHazard[];
  readonly unwatched: readonly UnwatchedHazard[];
  readonly waiting: readonly WaitingRule[];
  readonly notArmed: readonly { readonly rule: string; readonly needs: readonly string[] }[];
  /** Derived signals, with the numbers they rest on and what would confirm those. */
  readonly workedOut: readonly {
    readonly signal: string;
    readonly kind: string;
    readonly from: readonly string[];
    readonly settings: readonly CardSetting[];
    readonly needs: readonly string[];
  }[];
  /** Derived signals that do not exist for want of a number. */
  readonly notWorkedOut: readonly { readonly signal: string; readonly needs: readonly string[] }[];
  /** Rules that would mean nothing here, and why: no margin left, or nothing to tell it by. */
  readonly moot: readonly { readonly rule: string; readonly why: string }[];
  /** Armed, but on numbers nobody has confirmed for this material or site, or without a fire plan to name. */
  readonly unconfirmed: readonly {
    readonly rule: string;
    readonly numbers: readonly CardSetting[];
    readonly needs: readonly string[];
  }[];
  /** Signals whose sensors were compared with a reference. */
  readonly calibrations: readonly ({ readonly signal: string } & CalibrationDates)[];
  /** Measured signals whose silence no rule would notice. */
  readonly silenceUnnoticed: readonly string[];
  readonly off: readonly SwitchedOffRule[];
}
