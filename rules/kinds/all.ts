/** Every rule kind by its name. The engine needs no such list; a site file does. */
import { age } from './age.ts';
import { approach } from './approach.ts';
import { band } from './band.ts';
import { chart } from './chart.ts';
import { deviation } from './deviation.ts';
import { disagree } from './disagree.ts';
import { drift } from './drift.ts';
import { dry } from './dry.ts';
import { duty } from './duty.ts';
import { exposure } from './exposure.ts';
import { held } from './held.ts';
import type { RuleKind } from './kind.ts';
import { lost } from './lost.ts';
import { present } from './present.ts';
import { rise } from './rise.ts';
import { selfHeat } from './self-heat.ts';
import { sequence } from './sequence.ts';
import { stray } from './stray.ts';
import { stuck } from './stuck.ts';
import { tooSoon } from './too-soon.ts';

export const ruleKinds: ReadonlyMap<string, RuleKind> = new Map(
  [
    ...[band, deviation, approach, rise, drift, chart],
    ...[stray, disagree, dry, selfHeat, exposure, duty],
    ...[lost, stuck, age, sequence, tooSoon, present, held],
  ].map((kind): [string, RuleKind] => [kind.name, kind]),
);
