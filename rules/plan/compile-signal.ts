/** A written signal to canonical numbers: its reading, its resolution, its times. */
import { counted } from '../quantity/counted.ts';
import { parseDuration } from '../quantity/duration.ts';
import { parseQuantity, type Quantity, withoutDust } from '../quantity/quantity.ts';
import {
  canonicalUnit,
  differenceToCanonical,
  dimensionWords,
  sameDimension,
  toCanonical,
  type Unit,
  unitOf,
} from '../quantity/unit.ts';
import { suggestedCodes, unitFix } from '../quantity/unit-fix.ts';
import { holdMsDefault, latenessMsDefault } from '../site/bounds.ts';
import { isMeasured, type MeasuredWritten, type SignalWritten } from '../site/signal-schema.ts';
import type { StationSignal } from '../stations/station.ts';
import { compileCalibration, compileCalibrationDates } from './compile-calibration.ts';
import { manualTimes, reportDueEvery } from './compile-manual.ts';
import { compileSensor, measuredUnit } from './compile-sensor.ts';
import type { Path, ReadingDraft, Report, SignalDraft, StationDraft } from './draft.ts';
import type { Sensor } from './sensor.ts';
import { sentence } from './sentence.ts';
import { topicProblem, wildcardLevels } from './topic.ts';

/** Decimals kept where neither the site nor the station says: finer than common sensors tell. */
const digitsDefault = 2;
const digitsMax = 6;

/** null where the unit is none we take; all other problems leave a signal that can be judged. */
export function compileSignal(
  station: StationDraft,
  name: string,
  written: SignalWritten,
  path: Path,
  known: StationSignal | undefined,
  heard: readonly string[],
  report: Report,
): SignalDraft | null {
  const measured = isMeasured(written);
  const names = measured ? compileNames(written, path, report) : [];
  const unit = compileUnit(written, path, known, report);
  const sensor = compileSensor(station, written, path, report);
  if (unit === null) return null;
  if (measured) reportDueEvery(written, path, report);
  const times = (measured ? compileTimes : manualTimes)(written, path, report);
  return {
    station,
    name,
    path,
    kind: measured ? 'measured' : 'manual',
    names,
    instances: names.length === 0 ? [''] : heard,
    unit: unit.canonical,
    digits: compileDigits(written, path, known, report),
    ...times,
    reading: {
      ...compileReading(written, unit, sensor, path, known, report),
      calibrationDates: compileCalibrationDates(written, station.timezone, path, report),
    },
    derived: null,
  };
}

function compileNames(written: MeasuredWritten, path: Path, report: Report): readonly string[] {
  const bad = topicProblem(written.topic);
  if (bad !== null) {
    report({ path: [...path, 'topic'], ...bad });
    return [];
  }
  const levels = wildcardLevels(written.topic).length;
  const names = written.names ?? [];
  if (names.length === levels && new Set(names).size === names.length) return names;
  report({
    path: [...path, written.names === undefined ? 'topic' : 'names'],
    problem:
      names.length === levels
        ? 'two levels have the same name'
        : `the topic has ${levels} +, and ${names.length === 0 ? 'no names' : counted(names.length, 'name')}`,
    fix:
      levels === 0
        ? 'Take the names out, or write + for the level that varies.'
        : 'Give `names` one name for each +, in order, as names: [cell].',
  });
  return names.slice(0, levels);
}

/** Of what it measures. Where the written unit cannot be, the station's own or what was meant stands in, so that the rest is checked too. */
function compileUnit(
  written: SignalWritten,
  path: Path,
  known: StationSignal | undefined,
  report: Report,
): Unit | null {
  const sent = unitOf(written.unit);
  const unit = sent === null ? null : measuredUnit(written);
  const own = known === undefined ? null : unitOf(known.unit);
  if (sent === null) {
    report({
      path: [...path, 'unit'],
      problem: `"${written.unit}" is no unit we take`,
      fix: sentence(unitFix(written.unit)),
    });
    return own ?? unitOf(suggestedCodes(written.unit)[0] ?? '');
  }
  // A loop whose ends cannot be read is told where it is compiled.
  if (unit === null) return own;
  if (known === undefined || own === null || sameDimension(unit, own)) return unit;
  const raw = written.sensor !== undefined;
  report({
    path: [...path, raw ? 'sensor' : 'unit'],
    problem: `${raw ? 'it measures' : `"${written.unit}" is`} ${dimensionWords(unit)}; ${known.name} is ${dimensionWords(own)} (${known.meaning})`,
    fix: `Write ${own.code}, or another unit of the same quantity; or give the signal a name of your own.`,
  });
  return own;
}

function compileDigits(
  written: SignalWritten,
  path: Path,
  known: StationSignal | undefined,
  report: Report,
): number | null {
  if (written.resolution === 'none') return null;
  const resolution = written.resolution ?? known?.resolution;
  if (resolution === undefined) return digitsDefault;
  for (let digits = 0; digits <= digitsMax; digits += 1)
    if (resolution === Number(`1e-${digits}`)) return digits;
  report({
    path: [...path, 'resolution'],
    problem: `${resolution} is no resolution`,
    fix: 'Write 1, 0.1, 0.01 … to 0.000001, in the canonical unit of the quantity; or none.',
  });
  return digitsDefault;
}

function compileTimes(
  written: SignalWritten,
  path: Path,
  report: Report,
): Pick<SignalDraft, 'holdMs' | 'latenessMs' | 'expectEveryMs'> {
  const duration = (key: 'hold' | 'lateness' | 'expect_every'): number | null => {
    const text = written[key];
    if (text === undefined) return null;
    const read = parseDuration(text);
    if (read.ok) return read.value;
    report({ path: [...path, key], problem: read.problem, fix: sentence(read.fix) });
    return null;
  };
  const ownTime = hasOwnTime(written);
  const holdMs = duration('hold') ?? (ownTime ? holdMsDefault : 0);
  const latenessMs = duration('lateness') ?? latenessMsDefault;
  const expectEveryMs = duration('expect_every');
  if (holdMs > 0 && !ownTime)
    report({
      path: [...path, 'hold'],
      problem: 'a sample without its own time has nothing to wait for',
      fix: 'Take hold out, or give the payload a pointer to its time.',
    });
  if (holdMs >= latenessMs)
    report({
      path: [...path, written.hold === undefined ? 'lateness' : 'hold'],
      problem: 'a sample would be too late before its hold is over',
      fix: 'Make hold shorter than lateness.',
    });
  if (expectEveryMs === 0)
    report({
      path: [...path, 'expect_every'],
      problem: 'a signal cannot speak every 0 s',
      fix: 'Write how often it speaks, as 60 s.',
    });
  return { holdMs, latenessMs, expectEveryMs: expectEveryMs === 0 ? null : expectEveryMs };
}

export const hasOwnTime = (written: SignalWritten): boolean =>
  written.payload?.kind === 'json' && written.payload.time !== undefined;

function compileReading(
  written: SignalWritten,
  /** Of what it measures. */
  unit: Unit,
  sensor: Sensor | null,
  path: Path,
  known: StationSignal | undefined,
  report: Report,
): Omit<ReadingDraft, 'calibrationDates'> {
  const quantity = (text: string, key: Path): Quantity | null => {
    const read = parseQuantity(text, `7 ${unit.code}`);
    if (!read.ok)
      report({ path: [...path, ...key], problem: read.problem, fix: sentence(read.fix) });
    else if (read.value.unit.dimension === unit.dimension) return read.value;
    else if (unit.canonical === 'K' && read.value.unit.dimension === 'temperature')
      return { value: read.value.value, unit: differenceUnit(read.value.unit) };
    else
      report({
        path: [...path, ...key],
        problem: `"${text}" is ${dimensionWords(read.value.unit)}, and the signal ${dimensionWords(unit)}`,
        fix: `Write it in ${unit.code}.`,
      });
    return null;
  };
  const bound = (text: string | undefined, key: Path, otherwise: number): number => {
    const read = text === undefined ? null : quantity(text, key);
    return read === null ? otherwise : withoutDust(toCanonical(read.value, read.unit));
  };
  const range = written.range ?? known?.range;
  const beyond = written.range === undefined ? beyondEnds(sensor) : 0;
  const low = bound(range?.[0], ['range', 0], Number.NEGATIVE_INFINITY) - beyond;
  const high = bound(range?.[1], ['range', 1], Number.POSITIVE_INFINITY) + beyond;
  if (low >= high)
    report({
      path: [...path, 'range'],
      problem: 'the range is empty',
      fix: 'Write the lowest value first, then the highest.',
    });
  return {
    written,
    unit,
    sent: sensor === null ? unit : (unitOf(written.unit) ?? unit),
    sensor,
    ...compileCalibration(written, path, report),
    low,
    high,
    maxRatePerS: compileRate(written, path, quantity, report),
  };
}

/** A loop tells values a little beyond its ends; the station's range must not make them bad. */
const beyondEnds = (sensor: Sensor | null): number =>
  sensor?.kind === 'current-loop' ? Math.abs(sensor.atFull - sensor.atZero) / 16 : 0;

/** A kelvin or degree read as a difference. */
const differenceUnit = (unit: Unit): Unit => ({
  ...canonicalUnit('K'),
  code: unit.code,
  times: unit.times,
  over: unit.over,
});

function compileRate(
  written: SignalWritten,
  path: Path,
  quantity: (text: string, key: Path) => Quantity | null,
  report: Report,
): number | null {
  const rate = written.max_rate;
  if (rate === undefined) return null;
  const change = quantity(rate.change, ['max_rate', 'change']);
  const per = parseDuration(rate.per);
  if (!per.ok)
    report({ path: [...path, 'max_rate', 'per'], problem: per.problem, fix: sentence(per.fix) });
  if (change === null || !per.ok) return null;
  if (change.value > 0 && per.value > 0)
    return (differenceToCanonical(change.value, change.unit) * 1_000) / per.value;
  report({
    path: [...path, 'max_rate'],
    problem: 'a rate needs a change and a time above zero',
    fix: 'Write it as {change: 5 K, per: 1 min}.',
  });
  return null;
}
