/**
 * Whether the sensors that keep people from harm can read past the limits they are judged by. One that
 * ends below a limit tells "outside what the sensor can read" where it ought to tell a fire.
 */
import { parseQuantity, withoutDust } from '../quantity/quantity.ts';
import { fromCanonical, toCanonical } from '../quantity/unit.ts';
import { boundsOf } from './binding.ts';
import type { ReadingDraft, Report, RuleDraft, SignalDraft } from './draft.ts';
import { idOf } from './draft.ts';
import type { RuleChange } from './weaker.ts';

/**
 * So far past its highest limit a sensor of temperature must read, and so far at most a calibration may
 * shift it there. Engineering judgement: a fire that grows is then still read for some minutes.
 */
const marginK = 20;

export interface SignalChange extends RuleChange {
  /** `line/station/signal`; of a wildcard the part before `-<instance>`. */
  readonly signal: string;
}

export const leansOn = (from: SignalDraft, signal: SignalDraft): boolean =>
  from === signal || (from.derived?.inputs.some((input) => leansOn(input, signal)) ?? false);

interface Limit {
  readonly rule: string;
  readonly side: 'low' | 'high';
  /** Canonical. */
  readonly value: number;
}

export function reportReach(
  signals: Iterable<SignalDraft>,
  rules: readonly RuleDraft[],
  report: Report,
): void {
  for (const signal of signals) {
    const { reading } = signal;
    if (reading === null) continue;
    // Of two with one limit the one is named that tells when it is passed, not the forecast.
    const limits = guarding(rules)
      .sort((a, b) => Number(b.kind.limits !== undefined) - Number(a.kind.limits !== undefined))
      .flatMap((rule) => limitsOn(rule, signal));
    for (const side of ['low', 'high'] as const) {
      const sign = side === 'high' ? 1 : -1;
      const [last] = limits
        .filter((limit) => limit.side === side)
        .sort((a, b) => sign * (b.value - a.value));
      if (last === undefined) continue;
      reportShort(signal, reading, last, report);
      reportCalibration(signal, reading, last, report);
    }
  }
}

/** Range and calibration of the site's own, where people's safety leans on the signal. */
export const changedSignals = (
  signals: Iterable<SignalDraft>,
  rules: readonly RuleDraft[],
): SignalChange[] =>
  [...signals].flatMap((signal): SignalChange[] => {
    const { station, name, reading } = signal;
    if (reading === null || !leanedOn(signal, rules)) return [];
    const { range, calibration } = reading.written;
    const usual = station.kind.signals.find((known) => known.name === name)?.range;
    const of = { signal: idOf(station, name, '') };
    const ends = (each: readonly string[] | undefined): string => each?.join(' to ') ?? 'none';
    return [
      ...(range === undefined || ends(range) === ends(usual)
        ? []
        : [{ ...of, what: 'range', usual: ends(usual), written: ends(range) }]),
      ...(calibration === undefined
        ? []
        : [
            {
              ...of,
              what: 'calibration',
              usual: 'none',
              written: calibration.map(([is, read]) => `true ${is} read as ${read}`).join(', '),
            },
          ]),
    ];
  });

/** Whether people's safety leans on it. */
export const leanedOn = (signal: SignalDraft, rules: readonly RuleDraft[]): boolean =>
  guarding(rules).some((rule) => rule.signals.some((on) => leansOn(on, signal)));

const guarding = (rules: readonly RuleDraft[]): RuleDraft[] =>
  rules.filter((rule) => rule.people || rule.class.highlyManaged);

/** Those of a value of the signal's own quantity: judged directly, or worked out from it. */
function limitsOn(rule: RuleDraft, signal: SignalDraft): Limit[] {
  const [judged] = rule.signals;
  if (judged === undefined || rule.compiled === null || rule.kind.watchesHealth === true) return [];
  if (judged.unit !== signal.unit || !leansOn(judged, signal)) return [];
  const { low, lowLow, high, highHigh } =
    rule.kind.limits?.(rule.compiled) ?? writtenLimits(rule.settings);
  const of = (side: Limit['side'], value: number | null): Limit[] =>
    value === null || !Number.isFinite(value) ? [] : [{ rule: rule.name, side, value }];
  return [...of('low', low), ...of('low', lowLow), ...of('high', high), ...of('high', highHigh)];
}

/** Of a kind without a ruler, as `approach`. */
function writtenLimits({ low, high }: RuleDraft['settings']) {
  const canonical = (text: unknown): number | null => {
    const read = typeof text === 'string' ? parseQuantity(text) : null;
    return read?.ok === true ? withoutDust(toCanonical(read.value.value, read.value.unit)) : null;
  };
  return { low: canonical(low), lowLow: null, high: canonical(high), highHigh: null };
}

const marginOf = (signal: SignalDraft): number => (signal.unit === 'Cel' ? marginK : 0);

const past = (signal: SignalDraft): string =>
  signal.unit === 'Cel' ? `at least ${marginK} K past it (our judgement)` : 'past it';

function reportShort(
  signal: SignalDraft,
  reading: ReadingDraft,
  { rule, side, value }: Limit,
  report: Report,
): void {
  const { written, sensor } = reading;
  const sign = side === 'high' ? 1 : -1;
  const short = (end: number): boolean => {
    const room = sign * (end - value);
    return room <= 0 || room < marginOf(signal) - 1e-6;
  };
  const loop = sensor?.kind === 'current-loop' ? [sensor.atZero, sensor.atFull] : null;
  const loopEnd = loop === null ? null : loop.map((end) => calibrated(reading, end));
  const at = side === 'high' ? 1 : 0;
  const fault =
    written.range !== undefined && short(boundsOf(reading, signal.name)[side])
      ? { key: ['range', at], what: `the range ends at ${written.range[at]}` }
      : loopEnd !== null && short(sign * Math.max(...loopEnd.map((end) => sign * end)))
        ? { key: ['sensor'], what: 'its loop ends' }
        : null;
  if (fault === null) return;
  report({
    path: [...signal.path, ...fault.key],
    problem: `${fault.what}, and ${rule}, which keeps people from harm, judges it at ${words(reading, value)}: a reading that is past the end tells nothing`,
    fix: `The sensor must read ${past(signal)}; write how far it does. If it cannot, it is no sensor for this hazard: fit another.`,
  });
}

/** A calibration that makes a hot place look cool. */
function reportCalibration(
  signal: SignalDraft,
  reading: ReadingDraft,
  { rule, side, value }: Limit,
  report: Report,
): void {
  const { unit, slope, intercept } = reading;
  if (signal.unit !== 'Cel' || reading.written.calibration === undefined) return;
  const read = toCanonical((fromCanonical(value, unit) - intercept) / slope, unit);
  const hidden = (side === 'high' ? 1 : -1) * (read - value);
  if (hidden <= marginK) return;
  report({
    path: [...signal.path, 'calibration'],
    problem: `with it ${rule}, which keeps people from harm at ${words(reading, value)}, comes only where the sensor reads ${words(reading, read)}`,
    fix: `A sensor that is more than ${marginK} K off at that limit (our judgement) is not put right by numbers: see that each point is [true, read], or fit another sensor.`,
  });
}

const calibrated = ({ slope, intercept, unit }: ReadingDraft, value: number): number =>
  toCanonical(slope * fromCanonical(value, unit) + intercept, unit);

const words = ({ unit }: ReadingDraft, value: number): string =>
  `${Number(fromCanonical(value, unit).toFixed(2))} ${unit.code}`;
