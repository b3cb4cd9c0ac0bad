/**
 * Racks on their way: blasted, primed, baked, dipped, dried, stored, moulded. One begins every 20
 * minutes, and eight go round, so that the same rack comes back before any of its clocks runs out.
 * Several are said at one moment where they may be: each moment is brought to the disk by itself.
 */
import { ovenPlant } from './invented-plant.ts';
import type { Draft } from './message.ts';
import type { Moment } from './moment.ts';
import { itemAt, mark, oneOf, phase, reading, type Says } from './people-says.ts';

const { cycleS } = ovenPlant;
const racks = 8;
const hourMs = 3_600_000;
const dayMs = 24 * hourMs;

const nameOf = (number: number): string => `rack-${21 + (((number % racks) + racks) % racks)}`;

/** The rack that is so far, in seconds, from the moment it goes into the drying oven. */
const rackAt = (fromOvenS: number) => (now: Moment) => {
  const beganS = now.lineS - fromOvenS;
  return phase(beganS, cycleS) === 0 ? nameOf(beganS / cycleS) : null;
};

const rack =
  (fromOvenS: number): Says =>
  (_, now) =>
    rackAt(fromOvenS)(now);

const timed =
  (fromOvenS: number): Says =>
  (_, now) => {
    const item = rackAt(fromOvenS)(now);
    return item === null ? null : itemAt(item, now.atMs);
  };

/** A rack of an old card that somebody finds. */
const found =
  (fault: Parameters<Moment['since']>[0], item: string, agoMs: number): Says =>
  (_, now) =>
    now.since(fault) === 0 ? itemAt(item, now.atMs - agoMs) : null;

const ended =
  (fault: Parameters<Moment['over']>[0], item: string, afterS = 0): Says =>
  (_, now) =>
    now.over(fault) === afterS ? item : null;

const probe: Says = (_, now) => {
  if (now.since('rack-from-the-cold') === 20) return '3.5';
  return now.over('rack-from-the-cold') === 0 ? '17.5' : null;
};

export const rackMarks: readonly Draft[] = [
  mark('prep-1', 'blasted', oneOf(timed(-3_000), found('rack-left-bare', 'rack-40', 3.2 * hourMs))),
  mark(
    'prep-1',
    'inspected',
    oneOf(rack(-2_280), (_, now) => (now.since('rack-left-bare') === 1_030 ? 'rack-40' : null)),
  ),
  mark('prep-1', 'rinsed', rack(-1_800)),
  mark('prep-1', 'coated', oneOf(rack(-1_210), ended('rack-left-bare', 'rack-40'))),
  mark('booth-1', 'rack-in', rack(-1_800)),
  mark('booth-1', 'coated', rack(-1_210)),
  mark(
    'prebake-1',
    'primed',
    oneOf(
      timed(-1_210),
      found('primer-stood', 'rack-70', 7 * dayMs),
      found('covered-in-haste', 'rack-71', 0),
    ),
  ),
  mark('prebake-1', 'rack-in', rack(-1_200)),
  mark('prebake-1', 'rack-out', rack(-240)),
  mark(
    'prebake-1',
    'covered',
    oneOf(rack(-240), ended('primer-stood', 'rack-70'), ended('covered-in-haste', 'rack-71')),
  ),
  mark('tank-1', 'rack-in', rack(-320)),
  mark('oven-1', 'rack-in', rack(0)),
  mark('oven-1', 'rack-out', rack(960)),
  mark('racks-1', 'coated', oneOf(timed(960), found('rack-overaged', 'rack-60', 31 * dayMs))),
  mark('racks-1', 'moved-in', rack(960)),
  mark('racks-1', 'moulded', rack(4_200)),
  mark('racks-1', 'scrapped', ended('rack-overaged', 'rack-60')),
  mark('racks-1', 'brought-in', (_, now) =>
    now.since('rack-from-the-cold') === 0 ? 'rack-50' : null,
  ),
  mark('racks-1', 'unwrapped', ended('rack-from-the-cold', 'rack-50', 60)),
  reading('racks-1', 'part-probe', probe),
];
