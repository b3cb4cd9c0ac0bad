/** Every kind of derived signal, by name. A new kind is a file of its own and a line here. */
import { atmosphericDewPoint } from './atmospheric-dew-point.ts';
import type { DerivedKind } from './derived-kind.ts';
import { dewPoint } from './dew-point.ts';
import { dewPointMargin } from './dew-point-margin.ts';
import { pipeMargin } from './pipe-margin.ts';
import { selfHeatExcess } from './self-heat-excess.ts';
import { weirFall } from './weir-fall.ts';

export type { DerivedInput, DerivedKind } from './derived-kind.ts';

export const derivedKinds: ReadonlyMap<string, DerivedKind> = new Map(
  [dewPoint, dewPointMargin, atmosphericDewPoint, pipeMargin, selfHeatExcess, weirFall].map(
    (kind) => [kind.name, kind],
  ),
);
