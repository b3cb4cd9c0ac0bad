/** A raw sensor of the site file to what intake needs of it: its numbers, and its cold junction. */
import { coldJunctionMaxC, coldJunctionMinC } from '../process/thermocouple.ts';
import { parseDuration } from '../quantity/duration.ts';
import { parseQuantity, type Quantity, withoutDust } from '../quantity/quantity.ts';
import {
  canonicalUnit,
  dimensionWords,
  sameDimension,
  toCanonical,
  type Unit,
  unitOf,
} from '../quantity/unit.ts';
import { coldJunctionStaleMsDefault } from '../site/bounds.ts';
import { isName } from '../site/name.ts';
import type { SensorWritten } from '../site/sensor-schema.ts';
import type { SignalWritten } from '../site/signal-schema.ts';
import { type Path, type Report, reportNoSignal, type StationDraft } from './draft.ts';
import type { ColdJunction, Sensor } from './sensor.ts';
import { sentence } from './sentence.ts';
import { wildcardLevels } from './topic.ts';

type WrittenOf<Kind> = Extract<SensorWritten, { readonly kind: Kind }>;

const sends = {
  thermocouple: { unit: canonicalUnit('mV'), example: 'mV or uV' },
  pt100: { unit: canonicalUnit('Ohm'), example: 'Ohm' },
  'current-loop': { unit: canonicalUnit('mA'), example: 'mA' },
} as const;

const celsius = canonicalUnit('Cel');

/** The unit of what a signal measures, whatever it sends; null where it is none. */
export function measuredUnit(written: SignalWritten): Unit | null {
  const { sensor } = written;
  if (sensor === undefined) return unitOf(written.unit);
  if (sensor.kind !== 'current-loop') return celsius;
  const from = parseQuantity(sensor.from);
  return from.ok ? from.value.unit : null;
}

/** null where there is none, or it cannot be used; then its problem is told. */
export function compileSensor(
  station: StationDraft,
  written: SignalWritten,
  path: Path,
  report: Report,
): Sensor | null {
  const { sensor } = written;
  if (sensor === undefined) return null;
  const at = [...path, 'sensor'];
  const sent = unitOf(written.unit);
  const wanted = sends[sensor.kind];
  if (sent !== null && !sameDimension(sent, wanted.unit))
    report({
      path: [...path, 'unit'],
      problem: `"${written.unit}" is ${dimensionWords(sent)}, and this sensor sends ${dimensionWords(wanted.unit)}`,
      fix: `Write what the message holds, as ${wanted.example}; or take sensor out, where the sender has worked it out already.`,
    });
  switch (sensor.kind) {
    case 'thermocouple': {
      const coldJunction = compileColdJunction(station, written, sensor, at, report);
      if (coldJunction === null) return null;
      const { kind, type } = sensor;
      return { kind, type, unit: celsius, coldJunction, grade: sensor.class ?? null };
    }
    case 'pt100':
      return {
        kind: 'pt100',
        unit: celsius,
        leadOhm: leadOhm(sensor, at, report),
        grade: sensor.class ?? null,
      };
    case 'current-loop':
      return compileLoop(sensor, at, report);
  }
}

function quantityAt(text: string, path: Path, example: string, report: Report): Quantity | null {
  const read = parseQuantity(text, example);
  if (read.ok) return read.value;
  report({ path, problem: read.problem, fix: sentence(read.fix) });
  return null;
}

const canonicalOf = ({ value, unit }: Quantity): number => withoutDust(toCanonical(value, unit));

function leadOhm(written: WrittenOf<'pt100'>, path: Path, report: Report): number {
  const { wires = 4, lead_resistance: text } = written;
  if (text === undefined) {
    if (wires === 2)
      report({
        path: [...path, 'wires'],
        problem: 'two wires add their own resistance, some 2.6 Cel for each ohm',
        fix: 'Give lead_resistance, of both leads together, as 0.8 Ohm; or 0 Ohm where the instrument takes it off.',
      });
    return 0;
  }
  const at = [...path, 'lead_resistance'];
  const read = quantityAt(text, at, '0.8 Ohm', report);
  if (read === null) return 0;
  if (sameDimension(read.unit, sends.pt100.unit) && read.value >= 0) return canonicalOf(read);
  report({
    path: at,
    problem: `"${text}" is no resistance of a lead`,
    fix: 'Write it as 0.8 Ohm.',
  });
  return 0;
}

function compileLoop(
  written: WrittenOf<'current-loop'>,
  path: Path,
  report: Report,
): Sensor | null {
  const from = quantityAt(written.from, [...path, 'from'], '0 bar', report);
  const to = quantityAt(written.to, [...path, 'to'], '16 bar', report);
  if (from === null || to === null) return null;
  const problem = sameDimension(from.unit, to.unit)
    ? canonicalOf(from) === canonicalOf(to)
      ? 'at 4 mA and at 20 mA it would be the same'
      : null
    : `"${written.to}" is ${dimensionWords(to.unit)}, and from is ${dimensionWords(from.unit)}`;
  if (problem !== null) {
    report({
      path: [...path, 'to'],
      problem,
      fix: `Write what 20 mA means, in ${from.unit.code}, from the transmitter's label.`,
    });
    return null;
  }
  const { unit } = from;
  return { kind: 'current-loop', unit, atZero: canonicalOf(from), atFull: canonicalOf(to) };
}

function compileColdJunction(
  station: StationDraft,
  written: SignalWritten,
  sensor: WrittenOf<'thermocouple'>,
  path: Path,
  report: Report,
): ColdJunction | null {
  const at = [...path, 'cold_junction'];
  const text = sensor.cold_junction.trim();
  if (isName(text)) return coldJunctionSignal(station, written, text, at, report);
  const read = quantityAt(text, at, '25 Cel', report);
  if (read === null) return null;
  const temperatureC = sameDimension(read.unit, celsius) ? canonicalOf(read) : Number.NaN;
  if (temperatureC >= coldJunctionMinC && temperatureC <= coldJunctionMaxC)
    return { kind: 'fixed', temperatureC };
  report({
    path: at,
    problem: `"${text}" is no temperature of terminals`,
    fix: `Write one from ${coldJunctionMinC} to ${coldJunctionMaxC} Cel, or the name of the signal that measures it.`,
  });
  return null;
}

/** Another signal of the station: of messages, a temperature, and itself no thermocouple. */
function coldJunctionSignal(
  station: StationDraft,
  written: SignalWritten,
  name: string,
  path: Path,
  report: Report,
): ColdJunction | null {
  const signals = station.written.signals ?? {};
  const other = Object.hasOwn(signals, name) ? signals[name] : undefined;
  if (other === undefined) {
    reportNoSignal(station, new Map(Object.entries(signals)), name, path, report);
    return null;
  }
  const levels = wildcardLevels(other.topic ?? '').length;
  const unit = measuredUnit(other);
  const problem =
    other.by_hand === true
      ? 'is entered by hand, and a cold junction moves with the cabinet'
      : other.sensor?.kind === 'thermocouple'
        ? 'is a thermocouple, which needs a cold junction of its own'
        : unit !== null && !sameDimension(unit, celsius)
          ? `is ${dimensionWords(unit)}`
          : levels > 0 && !sameNames(written, other)
            ? 'is a wildcard with other names, so nobody can tell which of its values belongs here'
            : null;
  if (problem !== null) {
    report({
      path,
      problem: `"${name}" ${problem}`,
      fix: 'Name a signal that measures the temperature of the terminals, or write it as 25 Cel.',
    });
    return null;
  }
  const every = parseDuration(other.expect_every ?? '');
  return {
    kind: 'signal',
    id: `${station.id}/${name}`,
    ofInstance: levels > 0,
    staleAfterMs:
      every.ok && every.value > 0 ? missedMax * every.value : coldJunctionStaleMsDefault,
  };
}

/** Silent for so many times what was promised, it is stale, as it is lost. */
const missedMax = 3;

const sameNames = (one: SignalWritten, other: SignalWritten): boolean =>
  (one.names ?? []).join(' ') === (other.names ?? []).join(' ');
