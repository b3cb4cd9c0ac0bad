/**
 * What somebody most likely meant who wrote a quantity, a duration, a pointer or a setting as other
 * programs and other habits have it. Only ever said as the way out, never taken for written.
 */
import { unitOf } from '../quantity/unit.ts';
import { suggestedCodes } from '../quantity/unit-fix.ts';

const numberAndUnit = /^([+-]?\d+(?:[.,]\d+)?)\s*([^\s\d.,]\S*)$/;

/** "0,5Cel" as "0.5 Cel"; null where it is no number with a unit we take or can name. */
export function quantityMeant(text: string): string | null {
  const [, number = '', code = ''] = numberAndUnit.exec(text.trim()) ?? [];
  const unit = unitOf(code) === null ? suggestedCodes(code)[0] : code;
  return number === '' || unit === undefined ? null : `${number.replace(',', '.')} ${unit}`;
}

const durations: Readonly<Record<string, string>> = {
  ms: 'ms',
  s: 's',
  sec: 's',
  secs: 's',
  second: 's',
  seconds: 's',
  m: 'min',
  min: 'min',
  mins: 'min',
  minute: 'min',
  minutes: 'min',
  h: 'h',
  hr: 'h',
  hrs: 'h',
  hour: 'h',
  hours: 'h',
  d: 'd',
  day: 'd',
  days: 'd',
};

/** "5 minutes" as "5 min"; null where it is no length of time. */
export function durationMeant(text: string): string | null {
  const [, number = '', word = ''] = /^(\d+(?:[.,]\d+)?)\s*([A-Za-z]+)$/.exec(text.trim()) ?? [];
  const unit = Object.hasOwn(durations, word.toLowerCase()) ? durations[word.toLowerCase()] : null;
  return number === '' || unit == null ? null : `${number.replace(',', '.')} ${unit}`;
}

/** "$.data.v" and "data.v" as "/data/v"; null where it has other signs in it. */
export function pointerMeant(text: string): string | null {
  const bare = text.replace(/^\$\.?/, '').replace(/\[(\d+)\]/g, '.$1');
  return /^[\w-]+([./][\w-]+)*$/.test(bare) ? `/${bare.replaceAll('.', '/')}` : null;
}

/** Settings by the names that they have elsewhere. */
const synonyms: Readonly<Record<string, readonly string[]>> = {
  max: ['high'],
  maximum: ['high'],
  upper: ['high'],
  min: ['low'],
  minimum: ['low'],
  lower: ['low'],
  hysteresis: ['deadband'],
  delay: ['on_delay'],
  type: ['kind'],
  units: ['unit'],
  interval: ['expect_every'],
  period: ['expect_every'],
  precision: ['resolution'],
  offset: ['calibration'],
  scale: ['calibration'],
  format: ['payload'],
  path: ['value'],
  pointer: ['value'],
  tz: ['timezone'],
  zone: ['timezone'],
  time_zone: ['timezone'],
};

/** null where none of the known settings goes by that name elsewhere. */
export function settingMeant(name: string, known: readonly string[]): string | null {
  const meant = Object.hasOwn(synonyms, name.toLowerCase()) ? synonyms[name.toLowerCase()]! : [];
  return meant.find((each) => known.includes(each)) ?? null;
}

/** Zone_3 as zone-3; null where nothing of it is left. */
export function nameMeant(text: string): string | null {
  const plain = text
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, 40)
    .replace(/^-+|-+$/g, '');
  return plain === '' ? null : plain;
}
