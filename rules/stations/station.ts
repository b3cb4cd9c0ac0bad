/**
 * What a station kind is: the trade's knowledge of one step of the line, as data.
 *
 * A kind names the signals it knows, what it computes from them, what can go wrong and the rules
 * that watch for it. Every number stands in `numbers` with its basis, so that a site can see and
 * replace each; none is hidden in code. A number nobody may guess has the value null, and its rule
 * stays not armed until the data sheet or the site gives it.
 */
import type { Label } from '../alarm/label.ts';
import type { Priority } from '../alarm/priority.ts';
import type { HoldWhat } from '../hold/hold.ts';
import type { Sheet } from '../material/read-sheet.ts';
import type { AlarmClass } from '../plan/plan.ts';

/**
 * Where a number comes from: common practice without a published source, a published source, the
 * data sheet or the plant's own trial, the plant's hazard review or drawing, engineering
 * judgement to be proved on the line.
 */
export type Mark = 'CP' | 'PUB' | 'DS' | 'SITE' | 'EJ';

export interface Basis {
  readonly mark: Mark;
  readonly note: string;
  /** The published source; null where there is none. */
  readonly source: string | null;
}

export interface StationSignal {
  readonly name: string;
  /** Any UCUM unit of its quantity; the sensor may send another of the same quantity. */
  readonly unit: string;
  /** In the canonical unit of the quantity; a power of ten. */
  readonly resolution: number;
  /** Beyond these, as "-40 Cel", the reading cannot be true. */
  readonly range: readonly [string, string];
  readonly meaning: string;
  /** Where the sensor belongs, exactly. */
  readonly where: string;
  /** Only a person can read it, with a hand instrument: nobody is asked to bind a sensor. */
  readonly byHand?: true;
  /** A living reading moves within this; null where it may rest. Engineering judgement. */
  readonly stuckAfter: string | null;
}

/** Something people write down here that no signal tells. */
export interface StationMark {
  /** A name like a signal's; no signal of the station has it. */
  readonly name: string;
  /** What it happens to; null where it happens to the place itself. */
  readonly what: HoldWhat | null;
  /** What happened, in a sentence. */
  readonly meaning: string;
  /** Who writes it down, as it follows “by”. */
  readonly byWhom: string;
  /** Other parts hang on the rack: the heat it had before is not theirs. */
  readonly fresh?: true;
}

export interface StationDerived {
  readonly name: string;
  /** A derived kind (rules/derive/derived.ts). */
  readonly kind: string;
  /** Input of the kind to a signal of the station; it exists when all do that it cannot do without. */
  readonly inputs: Readonly<Record<string, string>>;
  /** Marks of the station that start it anew, for a kind that adds up. */
  readonly startsOn?: readonly string[];
  /** Marks of the station that it counts. */
  readonly countsOn?: readonly string[];
  /** It exists only where the site gives its numbers; nobody is asked for them, for something else stands in for it. */
  readonly onlyWritten?: true;
  /** Settings of the kind, each with its basis. It does not exist while one that nobody gave is missing. */
  readonly numbers?: readonly TemplateNumber[];
  readonly meaning: string;
  /** Why it would mean nothing here, and does not exist; null where it does. */
  readonly moot?: (given: Given) => string | null;
}

export interface Hazard {
  readonly id: string;
  /** What can happen, as a person would say it. */
  readonly words: string;
  /** Somebody can be hurt. */
  readonly people: boolean;
  /** The hand check for what no signal here can tell; null where signals can. */
  readonly byHand: string | null;
  /** Its sensors watch things apart, as a bin and a stack: none of them stands in for another. */
  readonly apart?: true;
}

export interface TemplateNumber {
  /** A setting of the rule's or derived signal's kind, as `low_low` or `on_delay`. */
  readonly setting: string;
  /** As a site would write it; null where nobody may guess it. */
  readonly value: string | null;
  readonly basis: Basis;
  /** Where it must come from in the end; until then the value stands unconfirmed. */
  readonly confirm?: 'DS' | 'SITE';
  /** What to enter, where `value` is null or unconfirmed. */
  readonly needs?: string;
  /** The same number from the material sheet; null where the sheet is silent. */
  readonly fromSheet?: (sheet: Sheet, given: Given) => string | null;
  /** The same number as it follows from others; null where it does not. */
  readonly follows?: (given: Given) => {
    readonly written: string;
    readonly confirmed: boolean;
    /** Where it follows from something else than `basis` says. */
    readonly basis?: Basis;
  } | null;
  /** Where a site's own word for it comes from, where that is more than the site file. */
  readonly ownBasis?: (given: Given) => Basis | null;
  /** Absent it leaves the rule armed; coverage asks for it all the same, where it `needs`. */
  readonly optional?: true;
  /** Not wanted where this other setting is given. */
  readonly unless?: string;
  /** Where people can be hurt a site may make it stricter alone, or as weak as this: its basis says for what. */
  readonly weakest?: string;
  /** A site may write a lower one, and a higher one only on a basket test of its residue. */
  readonly raisedBy?: 'basket-test';
  /** Higher than what, where that is not `value`. */
  readonly ceiling?: (given: Given) => string | null;
  /** And on such a test no higher than this; a reason where it may not be raised at all. */
  readonly proven?: (given: Given) => { readonly upTo: string } | { readonly never: string };
}

export interface TemplateGate {
  readonly signal: string;
  readonly low?: string;
  readonly high?: string;
  /** In place of `low`: a number of another rule, by rule and setting. Not in force while nobody gave it. */
  readonly lowFrom?: readonly [rule: string, setting: string];
}

/** A text that is put together, so that no book of texts can hold it. */
export interface Bilingual {
  readonly text: string;
  readonly german: string;
}

/** What a template's facts are made of: the sheet, and numbers as the site, sheet or station gives them. */
export interface Given {
  readonly sheet: Sheet | null;
  /** How the place is heated, where the site says so. */
  readonly heating: 'convection' | 'infrared' | null;
  /** What the place runs at by itself, as written; null where nobody said. */
  readonly processTemperature: string | null;
  /** How thick the residue lies, as written; null where nobody said. */
  readonly residueThickness: string | null;
  /** Of the residue here; null where the site gave none. */
  readonly basket: BasketReport | null;
  /** Whether the site binds this signal of the station. */
  bound(signal: string): boolean;
  /** How much a container here holds, as written; null where nobody said. */
  readonly containerSize: string | null;
  readonly firePlan: {
    readonly phone: string;
    readonly muster_point: string;
    readonly lone_worker?: string | undefined;
  } | null;
  /** What the site itself wrote for a rule of this station; null where it wrote nothing. */
  own(rule: string, setting: string): string | null;
  /** As written, of a rule of this station; null where nobody gave it. Throws on a name it has not. */
  number(rule: string, setting: string): string | null;
  /** Whether it came from where it must come from. */
  confirmed(rule: string, setting: string): boolean;
}

/** A test of this very residue, signed. */
export interface BasketReport {
  readonly report: string;
  readonly signedBy: string;
  /** Where a layer so thick may light itself at the lowest, °C; null where the report has no baskets. */
  readonly lowC: (thicknessMm: number) => number | null;
  /** The same, of no less than the smallest basket: what a limit may be raised to. */
  readonly provenC: (thicknessMm: number) => number | null;
}

export interface RuleTemplate {
  readonly name: string;
  readonly kind: string;
  /** It judges the first of these that is bound; a kind of several judges them together. Empty where marks are all. */
  readonly signals: readonly string[];
  /** What it judges in place of a signal that is not bound, by that signal’s name. */
  readonly instead?: Readonly<Record<string, string>>;
  /** Marks of the station it judges, in the order of their roles. */
  readonly marks?: readonly string[];
  /** Why it would mean nothing here; null where it does. */
  readonly moot?: (given: Given) => string | null;
  /** Its steps name the fire plan: coverage asks for one. */
  readonly firePlan?: true;
  /** What a site writes for that rule holds here too, unless this one has its own: all of it, or these settings. */
  readonly alike?: { readonly rule: string; readonly only?: readonly string[] };
  readonly numbers: readonly TemplateNumber[];
  /** Settings that are no numbers. */
  readonly fixed?: Readonly<Record<string, boolean>>;
  /** In force where its signal is bound; of several, all that are in force must hold. */
  readonly gate: TemplateGate | readonly TemplateGate[] | null;
  readonly class: AlarmClass;
  /** By severity 1 and 2. */
  readonly priority: readonly [Priority, Priority];
  /** Time there is to act, as a duration. */
  readonly respond: string;
  readonly hazard: string;
  readonly hold: HoldWhat | null;
  /** Marks: the one whose last item is held, and the one by which it leaves. Else the container, or the place. */
  readonly named?: readonly string[];
  readonly label: Label;
  /** What the label's placeholders name beyond the evidence, as written quantities or durations. */
  readonly facts?: (given: Given) => Readonly<Record<string, string | Bilingual>>;
}

/** Signals and rules that make an oven run. */
export interface StationRun {
  /** 1 while loaded. */
  readonly loaded: string;
  readonly metal: string;
  /** What gives the metal where nobody measures it. */
  readonly metalElse?: string;
  readonly beside: readonly string[];
  /** Marks: a rack goes in, and comes out; its heat is summed over every oven. */
  readonly racks?: readonly [arrived: string, left: string];
  /** Rules of the kind `dry` whose least and whose most a run is held against. */
  readonly least: string;
  readonly most: string;
}

export interface StationKind {
  readonly name: string;
  readonly summary: string;
  readonly signals: readonly StationSignal[];
  readonly derived: readonly StationDerived[];
  /** What people write down here. */
  readonly marks?: readonly StationMark[];
  readonly hazards: readonly Hazard[];
  readonly rules: readonly RuleTemplate[];
  /** Loads are followed from entry to exit. */
  readonly run?: StationRun;
}

/** An alarm that stays for an answer, may be shelved, and goes once it is over and answered. */
export const plainClass: AlarmClass = {
  latching: false,
  selfAcknowledging: false,
  highlyManaged: false,
};

export const commonPractice = (note: string): Basis => ({ mark: 'CP', note, source: null });
export const judgement = (note: string): Basis => ({ mark: 'EJ', note, source: null });

/** An alarm that only somebody with the right may take out of sight. */
export const managedClass: AlarmClass = { ...plainClass, highlyManaged: true };
/** And that stays until somebody has been there and resets it. */
export const latchedClass: AlarmClass = { ...managedClass, latching: true };

const delayBasis = judgement('long enough not to chatter; prove it on the line');

/** A delay or deadband: engineering judgement, to be proved on the line. */
export const tuning = (setting: string, value: string): TemplateNumber => ({
  setting,
  value,
  basis: delayBasis,
});

/** Of a check whose clock is a mark: late after a shift. */
export const onceEachShift: readonly TemplateNumber[] = [
  { setting: 'limit', value: '8 h', basis: commonPractice('once each shift') },
  { setting: 'early', value: '90 %', basis: judgement('time left to make it within the shift') },
];
