/** Whether an unheated consignment stands the way: the time its wall has left, less the time on the road. */
import { z } from 'zod/mini';
import { quantitySetting } from '../kinds/settings.ts';
import { freightCheck } from '../process/freezing.ts';
import { quality } from '../signal/quality.ts';
import type { SettledKind } from './derived-kind.ts';
import { compileDrum, type DrumSettings, drumWritten } from './drum-body.ts';
import { drumSource } from './drum-wall-temperature.ts';

interface FreightSettings extends DrumSettings {
  readonly startC: number;
  readonly floorC: number;
}

const longestS = 7 * 86_400;
const secondsPerH = 3_600;

export const freightMargin: SettledKind<FreightSettings> = {
  name: 'freight-margin',
  summary:
    'Time until the wall of an unheated drum is at its lowest permitted temperature, were the whole way as cold as the coldest hour forecast, less the time on the way; below 0 it may not go. 7 d stands for longer or never.',
  inputs: [
    { name: 'coldest', unit: 'Cel', meaning: 'coldest air forecast on the way' },
    { name: 'transit', unit: 's', meaning: 'time from loading to unloading' },
  ],
  unit: 's',
  saidIn: 'h',
  digits: 0,
  source: drumSource,
  range: 'air of -60 to 60 °C, 0 to 1000 h on the way, a floor of 0 to 60 °C',
  written: z.strictObject({
    ...drumWritten,
    start: quantitySetting('Temperature of the drum as it is loaded.'),
    floor: quantitySetting('Lowest permitted temperature of the contents, at the wall.'),
  }),
  compile(read) {
    const drum = compileDrum(read);
    const floorC = read.quantity('floor', 'Cel') ?? 0;
    const startC = drum.startC ?? 0;
    const way = { startC, forecastMinimaC: [startC], transitH: 0, floorC };
    const tried = freightCheck(drum.container, { ...way, transferWPerM2K: drum.transferWPerM2K });
    if ('refused' in tried)
      read.report({
        path: [],
        problem: 'these numbers make no drum that can be computed',
        fix: 'look at their units: transfer is some 4 to 20 W/(m2.K), floor and start 0 to 60 °C',
      });
    return { ...drum, startC, floorC };
  },
  settled({ container, transferWPerM2K, startC, floorC }, now) {
    const transitS = now.inputs[1]!;
    const check = freightCheck(container, {
      startC,
      forecastMinimaC: [now.inputs[0]!],
      transitH: transitS / secondsPerH,
      transferWPerM2K,
      floorC,
    });
    if ('refused' in check) return null;
    now.doubt = quality.estimated;
    const { wallAtFloorAfterH: afterH } = check;
    return (afterH === 'never' ? longestS : Math.min(longestS, afterH * secondsPerH)) - transitS;
  },
};
