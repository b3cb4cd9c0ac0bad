/**
 * How long a container of adhesive stands the cold: until its wall, not its mean, is too cold.
 *
 * The wall freezes first and a dispersion breaks there. So an unstirred container is computed by
 * conduction, which leaves the wall colder than real liquid that turns over a little; a stirred one
 * may be computed as one temperature. Three things are not given on purpose: no time to freeze
 * through, since adhesive is spoilt long before; no temperature under 0 °C, where ice begins to
 * give off heat; no credit for what lowers the freezing point of water. Warming again heals nothing.
 */
import { type Cooling, endCooling, sideCooling } from './cooling-cylinder.ts';
import { biotMax, biotNumber, timeConstantS, timeToReachS } from './heating.ts';
import type { Subject } from './subject.ts';

export const subject: Subject = {
  title: 'Cold and freezing',
  about:
    'Time until the wall of a container reaches its lowest permitted temperature, in a cold store or on a lorry. It speaks of the wall, never of freezing through; it goes down to 0 °C and no further, and takes no credit for a lowered freezing point. What a probe at the wall reads always comes first.',
  symbols: {
    T: 'temperature, °C; T_0 at the start, T_a of the air',
    U: 'heat transfer from air to contents, W/(m2 K); 8 for a drum in still air (engineering judgement)',
    r: 'radius, m',
    h: 'height, m, where the ends cool too',
    tau: 'time constant of a stirred container, rho c V/(U A), s',
    Bi: 'U V/(A k), no unit',
  },
  source:
    'conduction as in Carslaw and Jaeger; one temperature as in Incropera or Cengel; the choice of the wall: common practice, no published source',
  uncertainty:
    'conduction alone leaves the wall too cold, one temperature too warm, and the truth lies between: for a 208 L drum from 20 °C in air of -10 °C, 4.5 and 13 h to 5 °C. U is known to a factor of two.',
  functions: {
    wallAfter: {
      formula: 'T = T_a + (T_0 - T_a) theta, theta by conduction at the wall and in the mean',
      range:
        'r 0.02 to 2 m, density 800 to 1600 kg/m3, heat 1500 to 4500 J/(kg K), conductivity 0.1 to 2 W/(m K), U 0.5 to 100 W/(m2 K), T -60 to 60 °C; a wall under 0 °C is told as "at or under 0", with no figure',
    },
    timeToWallS: {
      formula: 'the time at which wallAfter is the lowest permitted temperature',
      range: 'as wallAfter, to a temperature of 0 °C or more; refused under it',
    },
    stirredTimeS: {
      formula: 'tau ln((T_0 - T_a)/(T - T_a))',
      range:
        'as wallAfter, stirred without pause; refused unstirred and under 0 °C; uncertain where Bi is 0.1 or more',
    },
    freightCheck: {
      formula: 'timeToWallS in the coldest of the forecast minima against the time on the road',
      range: 'at least one forecast minimum, 0 to 1000 h; refused outside',
      source: 'engineering judgement',
    },
  },
};

/** A round container, all of one material at the start. */
export interface Container {
  readonly radiusM: number;
  /** Where its ends are cooled as its side is; null where only the side is. */
  readonly heightM: number | null;
  readonly densityKgPerM3: number;
  readonly heatJPerKgK: number;
  readonly conductivityWPerMK: number;
}

/** A 208 L drum of waterborne adhesive, 35 % solids, its ends not counted (engineering judgement). */
export const drum208L: Container = {
  radiusM: 0.286,
  heightM: null,
  densityKgPerM3: 1_100,
  heatJPerKgK: 3_500,
  conductivityWPerMK: 0.55,
};

export interface Cold {
  readonly startC: number;
  readonly airC: number;
  readonly transferWPerM2K: number;
}

export interface FreezingRefusal {
  /** `beyond-freezing`: under 0 °C, of which nothing is told. */
  readonly refused: 'out-of-range' | 'beyond-freezing' | 'unstirred';
}

export interface WallAfter {
  /** The coldest place of the wall; null for at or under 0 °C. */
  readonly wallC: number | null;
  /** Null likewise. */
  readonly meanC: number | null;
}

/** Wall and mean after `elapsedS`, 0 to 1e7 s. */
export function wallAfter(
  container: Container,
  cold: Cold,
  elapsedS: number,
): WallAfter | FreezingRefusal {
  const course = courseOf(container, cold);
  if (course === null || !(elapsedS >= 0 && elapsedS <= 1e7)) return { refused: 'out-of-range' };
  return {
    wallC: aboveZero(cold, course.wall(elapsedS)),
    meanC: aboveZero(cold, course.mean(elapsedS)),
  };
}

/**
 * Until the coldest place of the wall is at `floorC`, s, unstirred; 0 where it starts there, or is
 * there before conduction can be told; 'never' where the air is no colder.
 */
export function timeToWallS(
  container: Container,
  cold: Cold,
  floorC: number,
): number | 'never' | FreezingRefusal {
  if (floorC < 0) return { refused: 'beyond-freezing' };
  const course = courseOf(container, cold);
  if (course === null || !(floorC <= 60)) return { refused: 'out-of-range' };
  if (cold.startC <= floorC) return 0;
  if (cold.airC >= floorC) return 'never';
  const left = (floorC - cold.airC) / (cold.startC - cold.airC);
  if (course.wall(0) <= left) return 0;
  let low = 0;
  let high = 3_600;
  while (course.wall(high) > left) {
    high *= 2;
    if (high > 1e9) return { refused: 'out-of-range' };
  }
  while (high - low > 0.01) {
    const middle = (low + high) / 2;
    if (course.wall(middle) > left) low = middle;
    else high = middle;
  }
  return low;
}

export interface StirredTime {
  readonly seconds: number | 'never';
  readonly biot: number;
  /** Bi is 0.1 or more: even stirred, the wall runs ahead of the mean. */
  readonly uncertain: boolean;
}

/** Until a container that is stirred without pause is at `floorC`, as one temperature. */
export function stirredTimeS(
  container: Container,
  cold: Cold,
  floorC: number,
  stirred: boolean,
): StirredTime | FreezingRefusal {
  if (!stirred) return { refused: 'unstirred' };
  if (floorC < 0) return { refused: 'beyond-freezing' };
  if (!sound(container, cold) || !(floorC <= 60)) return { refused: 'out-of-range' };
  const { radiusM: r, heightM: h } = container;
  const volumePerAreaM = h === null ? r / 2 : (r * h) / (2 * (r + h));
  const biot = biotNumber(cold.transferWPerM2K, volumePerAreaM, container.conductivityWPerMK);
  const tau = timeConstantS(container, volumePerAreaM, cold.transferWPerM2K);
  if (biot === null || tau === null) return { refused: 'out-of-range' };
  const seconds = cold.startC <= floorC ? 0 : timeToReachS(cold.startC, cold.airC, floorC, tau);
  if (seconds === null) return { refused: 'out-of-range' };
  return { seconds, biot, uncertain: biot >= biotMax };
}

export interface FreightCheck {
  readonly coldestC: number;
  /** Until the wall is at its floor in the coldest air. */
  readonly wallAtFloorAfterH: number | 'never';
  /** At arrival, were it that cold all the way; null for at or under 0 °C. */
  readonly wallAtArrivalC: number | null;
  /** Every hour of the way may be as cold as the coldest forecast, and the wall still stands it. */
  readonly mayGo: boolean;
}

/** A consignment without heating, judged by the coldest hour forecast on its way. */
export function freightCheck(
  container: Container,
  way: {
    readonly startC: number;
    readonly forecastMinimaC: readonly number[];
    readonly transitH: number;
    readonly transferWPerM2K: number;
    readonly floorC: number;
  },
): FreightCheck | FreezingRefusal {
  const { startC, forecastMinimaC, transitH, transferWPerM2K, floorC } = way;
  if (forecastMinimaC.length === 0 || !(transitH >= 0 && transitH <= 1_000)) {
    return { refused: 'out-of-range' };
  }
  const coldestC = Math.min(...forecastMinimaC);
  const cold = { startC, airC: coldestC, transferWPerM2K };
  const after = timeToWallS(container, cold, floorC);
  if (typeof after === 'object') return after;
  const arrival = wallAfter(container, cold, transitH * 3_600);
  if ('refused' in arrival) return arrival;
  const wallAtFloorAfterH = after === 'never' ? after : after / 3_600;
  return {
    coldestC,
    wallAtFloorAfterH,
    wallAtArrivalC: arrival.wallC,
    mayGo: wallAtFloorAfterH === 'never' || wallAtFloorAfterH > transitH,
  };
}

function aboveZero(cold: Cold, share: number): number | null {
  const celsius = cold.airC + (cold.startC - cold.airC) * share;
  return celsius > 0 ? celsius : null;
}

/** Shares by seconds; side and ends together where both cool. */
function courseOf(container: Container, cold: Cold): Pick<Cooling, 'wall' | 'mean'> | null {
  if (!sound(container, cold)) return null;
  const { radiusM, heightM, conductivityWPerMK: k } = container;
  const perS = k / (container.densityKgPerM3 * container.heatJPerKgK);
  const side = sideCooling((cold.transferWPerM2K * radiusM) / k);
  if (side === null) return null;
  const sideFourier = perS / radiusM ** 2;
  if (heightM === null) {
    return {
      wall: (seconds) => side.wall(seconds * sideFourier),
      mean: (seconds) => side.mean(seconds * sideFourier),
    };
  }
  const ends = endCooling((cold.transferWPerM2K * heightM) / 2 / k);
  if (ends === null) return null;
  const endFourier = perS / (heightM / 2) ** 2;
  return {
    wall: (seconds) => side.wall(seconds * sideFourier) * ends.wall(seconds * endFourier),
    mean: (seconds) => side.mean(seconds * sideFourier) * ends.mean(seconds * endFourier),
  };
}

const within = (value: number, least: number, most: number): boolean =>
  value >= least && value <= most;

const sound = (container: Container, cold: Cold): boolean =>
  within(container.radiusM, 0.02, 2) &&
  (container.heightM === null || within(container.heightM, 0.05, 4)) &&
  within(container.densityKgPerM3, 800, 1_600) &&
  within(container.heatJPerKgK, 1_500, 4_500) &&
  within(container.conductivityWPerMK, 0.1, 2) &&
  within(cold.transferWPerM2K, 0.5, 100) &&
  within(cold.startC, -60, 60) &&
  within(cold.airC, -60, 60);
