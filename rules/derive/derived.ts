/** Every kind of derived signal, by name. A new kind is a file of its own and a line here. */
import { atmosphericDewPoint } from './atmospheric-dew-point.ts';
import { degreeHours } from './degree-hours.ts';
import type { DerivedKind } from './derived-kind.ts';
import { dewPoint } from './dew-point.ts';
import { dewPointMargin } from './dew-point-margin.ts';
import { drumBulkTemperature } from './drum-bulk-temperature.ts';
import { drumTimeToFloor } from './drum-time-to-floor.ts';
import { drumWallTemperature } from './drum-wall-temperature.ts';
import { filmFromWithdrawal } from './film-from-withdrawal.ts';
import { filmOverBase } from './film-over-base.ts';
import { freightMargin } from './freight-margin.ts';
import { heatDose } from './heat-dose.ts';
import { markCount } from './mark-count.ts';
import { meanKineticTemperatureKind } from './mean-kinetic-temperature.ts';
import { movingAverage } from './moving-average.ts';
import { partTemperature } from './part-temperature.ts';
import { pipeMargin } from './pipe-margin.ts';
import { pressureWaterClass } from './pressure-water-class.ts';
import { rackDose } from './rack-dose.ts';
import { rate } from './rate.ts';
import { residueGrowth } from './residue-growth.ts';
import { residueMargin } from './residue-margin.ts';
import { runtime } from './runtime.ts';
import { selfHeatExcess } from './self-heat-excess.ts';
import { filterShare, flowShare } from './share.ts';
import { solids } from './solids.ts';
import { solidsMargin } from './solids-margin.ts';
import { timeAbove } from './time-above.ts';
import { tipSpeed } from './tip-speed.ts';
import { turnover } from './turnover.ts';
import { weirFall } from './weir-fall.ts';
import { wetToDry } from './wet-to-dry.ts';

export type { DerivedInput, DerivedKind } from './derived-kind.ts';

const all: readonly DerivedKind[] = [
  dewPoint,
  dewPointMargin,
  atmosphericDewPoint,
  pipeMargin,
  pressureWaterClass,
  selfHeatExcess,
  residueGrowth,
  residueMargin,
  weirFall,
  drumWallTemperature,
  drumTimeToFloor,
  drumBulkTemperature,
  freightMargin,
  solids,
  solidsMargin,
  filmFromWithdrawal,
  filmOverBase,
  wetToDry,
  tipSpeed,
  runtime,
  markCount,
  turnover,
  filterShare,
  flowShare,
  partTemperature,
  timeAbove,
  heatDose,
  rackDose,
  degreeHours,
  meanKineticTemperatureKind,
  movingAverage,
  rate,
];

export const derivedKinds: ReadonlyMap<string, DerivedKind> = new Map(
  all.map((kind) => [kind.name, kind]),
);
