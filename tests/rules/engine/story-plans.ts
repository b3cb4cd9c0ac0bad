/** Two sites of one small line, and what differs between them: what stories are lived under. */
import { keeps } from './keeping-kinds.ts';
import { type SmallPlan, smallPlan } from './small-plan.ts';

/** Files of the site's own that some kinds are said to come from. */
export const [ownFile, otherFile] = ['rules/own.ts@1', 'rules/other.ts@1'] as const;

const rules = {
  'a-high': {
    kind: 'band',
    on: 'a',
    settings: {
      high: '30 Cel',
      high_high: '40 Cel',
      deadband: '2 K',
      on_delay: '1 s',
      off_delay: '500 ms',
    },
    hold: { what: 'container', item: 'drum' },
    respondMs: 4_000,
    class: { latching: true, selfAcknowledging: false, highlyManaged: false },
  },
  'a-lost': { kind: 'lost', on: 'a', settings: {}, respondMs: 3_000 },
  'b-lost': { kind: 'lost', on: 'b', settings: {} },
  'b-low': {
    kind: 'band',
    extension: ownFile,
    on: 'b',
    settings: { low: '10 Cel', on_delay: '700 ms' },
    gate: { on: 'gate', low: 20 },
  },
  'b-near': {
    kind: 'approach',
    on: 'b',
    settings: { low: '5 Cel', within: '10 s', window: '20 s' },
  },
  'b-dry': {
    kind: 'dry',
    on: ['b', 'gate'],
    settings: {
      above: '20 Cel',
      above_for: '3 s',
      dwell: '10 s',
      upper: '40 Cel',
      upper_for: '2 s',
      peak: '49 Cel',
    },
  },
  apart: {
    kind: 'stray',
    extension: otherFile,
    on: ['a', 'b', 'gate'],
    settings: { limit: '15 K', deadband: '5 K', on_delay: '900 ms' },
    respondMs: 2_001,
    suppress: {
      whiles: [
        { on: 'gate', high: 8, because: 'the line stands' },
        { from: 'l/s/begun', until: 'l/s/done', atMostMs: 9_000, because: 'it is being cleaned' },
      ],
      offDelayMs: 700,
    },
  },
  aged: {
    kind: 'age',
    on: 'gate',
    by: ['l/s/put', 'l/s/taken'],
    settings: { limit: '6 s', early: '50 %', damp_limit: '3 s', damp_above: '30 Cel' },
    hold: { what: 'rack', item: 'none' },
  },
  'place-late': { kind: 'age', on: [], by: ['l/s/done'], settings: { limit: '20 s' } },
  'after-done': {
    kind: 'sequence',
    on: ['b', 'gate'],
    by: ['l/s/done'],
    settings: { then_low: '30 Cel', counting_low: '10 Cel', within: '4 s', not_before: '1 s' },
  },
  'a-then-b': {
    kind: 'sequence',
    on: ['a', 'b'],
    settings: { first_low: '25 Cel', then_low: '25 Cel', within: '2 s', while_first: true },
  },
  'b-stuck': {
    kind: 'stuck',
    on: 'b',
    settings: { for: '5 s' },
    suppress: { whiles: [{ on: 'gate', low: 40, because: 'it is cold' }], offDelayMs: 0 },
  },
  'kept-high': { kind: 'band', on: 'kept', settings: { high: '80 Cel' } },
  'sum-high': {
    kind: 'band',
    on: 'sum',
    settings: { high: '50 Cel', on_delay: '300 ms' },
    respondMs: 1_500,
  },
} as const satisfies SmallPlan['rules'];

const signals = {
  a: { holdMs: 400, expectEveryMs: 2_000 },
  b: { expectEveryMs: 2_000 },
  gate: {},
  sum: {},
  kept: {},
};
const integral = { inputs: ['a', 'sum'], keeps: keeps(), extension: ownFile };
const sum = {
  inputs: ['a', 'b'],
  extension: otherFile,
  compute: (x: ArrayLike<number>): number | null => (x[0]! > 45 ? null : x[0]! + x[1]!),
};

const runs = {
  'l/o': {
    loaded: 'gate',
    metal: 'b',
    least: { fromC: 20, ms: 3_000 },
    peak: 49,
    most: { fromC: 40, ms: 2_000 },
  },
};

const marks = {
  'l/s/put': 'rack',
  'l/s/taken': 'rack',
  'l/s/done': null,
  'l/s/begun': null,
} as const;
const shelving = { high: 2_400, medium: 3_000, low: 4_000 };

export const plan = smallPlan({
  shelving,
  signals,
  derived: { sum, kept: integral },
  rules,
  runs,
  marks,
});

const { 'b-low': _, ...kept } = rules;
/** One rule gone, one changed, one new; a signal more, and one more computed from it. */
export const otherPlan = smallPlan({
  revision: 'other',
  shelving,
  marks: { ...marks, 'l/s/another': 'lot' },
  signals: { ...signals, aa: {}, 'b-twice': {} },
  runs: { ...runs, 'l/p': { loaded: 'aa', metal: 'a' } },
  derived: { sum, kept: integral, 'b-twice': { inputs: ['b'], compute: (x) => 2 * x[0]! } },
  rules: {
    ...kept,
    'a-high': { ...rules['a-high'], settings: { high: '25 Cel', on_delay: '600 ms' } },
    'a-lost': { kind: 'lost', on: 'a', settings: {} },
    'b-stuck': { kind: 'stuck', on: 'b', settings: { for: '5 s' }, respondMs: 1_000 },
    'place-late': { ...rules['place-late'], settings: { limit: '9 s' } },
    'aa-high': { kind: 'band', on: 'aa', settings: { high: '30 Cel' } },
    'twice-high': { kind: 'band', on: 'b-twice', settings: { high: '60 Cel' } },
  },
});
/** Of both. */
export const ruleIds = [...new Set([...plan.rules, ...otherPlan.rules].map(({ id }) => id))].sort();
