/**
 * The German of everything the rules say. English is the text by which each is known; what nobody
 * translated stays English.
 */
import { ownDoNotInGerman } from '../alarm/label.ts';
import type { CardLabel, LabelTexts } from '../plan/card.ts';
import { adhesiveStore } from './adhesive-store.ts';
import { adhesiveStoreCold } from './adhesive-store-cold.ts';
import { adhesiveStoreDerived } from './adhesive-store-derived.ts';
import { adhesiveStoreGoods } from './adhesive-store-goods.ts';
import { adhesiveStoreSignals } from './adhesive-store-signals.ts';
import { causes } from './causes.ts';
import { coatedStore } from './coated-store.ts';
import { coatedStoreSignals } from './coated-store-signals.ts';
import { compressedAir } from './compressed-air.ts';
import { compressedAirChecks } from './compressed-air-checks.ts';
import { compressedAirSignals } from './compressed-air-signals.ts';
import { dipTank } from './dip-tank.ts';
import { dipTankDerived } from './dip-tank-derived.ts';
import { dipTankHand } from './dip-tank-hand.ts';
import { dipTankHandSignals } from './dip-tank-hand-signals.ts';
import { dipTankLoop } from './dip-tank-loop.ts';
import { dipTankSignals } from './dip-tank-signals.ts';
import { dipTankWords } from './dip-tank-words.ts';
import { drumMixer } from './drum-mixer.ts';
import { drumMixerMixing } from './drum-mixer-mixing.ts';
import { drumMixerSignals } from './drum-mixer-signals.ts';
import { drumMixerSpeed } from './drum-mixer-speed.ts';
import { dryingOven } from './drying-oven.ts';
import { dryingOvenAir } from './drying-oven-air.ts';
import { dryingOvenLoad } from './drying-oven-load.ts';
import { dryingOvenSignals } from './drying-oven-signals.ts';
import { facts } from './facts.ts';
import { firePlan } from './fire-plan.ts';
import { heldUse } from './held-use.ts';
import { kindSentences } from './kind-sentences.ts';
import { kindSummaries } from './kind-summaries.ts';
import { needs } from './needs.ts';
import { ovenLoad } from './oven-load.ts';
import { partsSince } from './parts-since.ts';
import { preparation } from './preparation.ts';
import { preparationClocks } from './preparation-clocks.ts';
import { preparationSignals } from './preparation-signals.ts';
import { preparationSurface } from './preparation-surface.ts';
import { preparationWater } from './preparation-water.ts';
import { press } from './press.ts';
import { pressMould } from './press-mould.ts';
import { pressShot } from './press-shot.ts';
import { primerPreBake } from './primer-pre-bake.ts';
import { primerPreBakeAir } from './primer-pre-bake-air.ts';
import { primerPreBakeLoad } from './primer-pre-bake-load.ts';
import { residue } from './residue.ts';
import { residueCleaning } from './residue-cleaning.ts';
import { residueReaction } from './residue-reaction.ts';
import { residueSignals } from './residue-signals.ts';
import { residueSurface } from './residue-surface.ts';
import { residueTexts } from './residue-texts.ts';
import { residueWaste } from './residue-waste.ts';
import { sensorHealth } from './sensor-health.ts';
import { sprayBoothAir } from './spray-booth-air.ts';
import { sprayBoothFilm } from './spray-booth-film.ts';
import { sprayBoothGun } from './spray-booth-gun.ts';
import { sprayBoothHazards } from './spray-booth-hazards.ts';
import { sprayBoothMarks } from './spray-booth-marks.ts';
import { sprayBoothPot } from './spray-booth-pot.ts';
import { sprayBoothPotSignals } from './spray-booth-pot-signals.ts';
import { sprayBoothSignals } from './spray-booth-signals.ts';
import { sprayBoothWords } from './spray-booth-words.ts';
import type { Texts } from './texts.ts';

const books: readonly Texts[] = [
  adhesiveStoreCold,
  adhesiveStoreDerived,
  adhesiveStoreGoods,
  adhesiveStoreSignals,
  adhesiveStore,
  causes,
  coatedStoreSignals,
  coatedStore,
  compressedAirChecks,
  compressedAirSignals,
  compressedAir,
  dipTankDerived,
  dipTankHandSignals,
  dipTankHand,
  dipTankLoop,
  dipTankSignals,
  dipTankWords,
  dipTank,
  drumMixerMixing,
  drumMixerSignals,
  drumMixerSpeed,
  drumMixer,
  dryingOvenAir,
  dryingOvenLoad,
  dryingOvenSignals,
  dryingOven,
  facts,
  firePlan,
  heldUse,
  kindSentences,
  kindSummaries,
  needs,
  ovenLoad,
  partsSince,
  preparationClocks,
  preparationSignals,
  preparationSurface,
  preparationWater,
  preparation,
  pressMould,
  pressShot,
  press,
  primerPreBakeAir,
  primerPreBakeLoad,
  primerPreBake,
  residueCleaning,
  residueReaction,
  residueSignals,
  residueSurface,
  residueTexts,
  residueWaste,
  residue,
  sensorHealth,
  sprayBoothAir,
  sprayBoothFilm,
  sprayBoothGun,
  sprayBoothHazards,
  sprayBoothMarks,
  sprayBoothPotSignals,
  sprayBoothPot,
  sprayBoothSignals,
  sprayBoothWords,
];
const all: ReadonlyMap<string, string> = new Map(books.flatMap((book) => Object.entries(book)));

/** null where nobody translated it. */
export const germanOf = (english: string): string | null => all.get(english) ?? null;

export const inGerman = (english: string): string => germanOf(english) ?? english;

export const germanLabel = ({
  sentence,
  consequence,
  steps,
  doNot,
  caution,
}: CardLabel): LabelTexts => ({
  sentence: sentence === null ? null : inGerman(sentence),
  consequence: inGerman(consequence),
  steps: steps.map(inGerman),
  doNot: doNot.map((text) => germanOf(text) ?? ownDoNotInGerman(text)),
  caution: inGerman(caution),
});
