/** German for the texts of `rules/stations/adhesive-store-cold.ts`. */
import type { Texts } from './texts.ts';

export const adhesiveStoreCold: Texts = {
  '{$signal} at {$value}, below {$limit}, for {$duration}.':
    '{$signal}: {$value}, unter {$limit}, seit {$duration}.',
  'Cold spoils the adhesive: its solids clump and do not mix in again. A container freezes first at its wall.':
    'Kälte verdirbt das Haftmittel: Seine Feststoffe verklumpen und lassen sich nicht wieder einmischen. Ein Gebinde gefriert zuerst an der Wand.',
  'Measure in the adhesive of the coldest container and enter the reading.':
    'Im Haftmittel des kältesten Gebindes messen und den Messwert eingeben.',
  'Close doors and gates; see whether the heating runs.':
    'Türen und Tore schließen; prüfen, ob die Heizung läuft.',
  'Move containers off the floor and away from the outer wall, to a place between {$low} and {$high}; mark any you doubt and put them on hold.':
    'Gebinde vom Boden und von der Außenwand weg an einen Platz zwischen {$low} und {$high} bringen; zweifelhafte kennzeichnen und sperren.',
  'warm it with flame, heat gun, band heater, steam or oven':
    'Das Haftmittel nicht mit Flamme, Heißluftgebläse, Heizband, Dampf oder Ofen erwärmen.',
  'stir adhesive that may have frozen': 'Haftmittel, das gefroren sein kann, nicht rühren.',
  'Full drums crush. Use the drum lift and the site’s lifting rules.':
    'Quetschgefahr durch volle Fässer. Fassheber benutzen und die Hebevorschriften des Werks beachten.',
  '{$station}: adhesive measured at {$value} at its container’s wall, below {$limit}.':
    '{$station}: Haftmittel an der Wand seines Gebindes: {$value} gemessen, unter {$limit}.',
  '{$signal} at {$value}, falling {$slope} an hour; {$limit} in {$early} to {$late} if it goes on so.':
    '{$signal}: {$value}, fällt um {$slope} je Stunde; {$limit} in {$early} bis {$late}, wenn es so weitergeht.',
  'Freezing breaks the dispersion: the solids clump. Thawing does not mend it.':
    'Gefrieren zerstört die Dispersion: Die Feststoffe verklumpen. Auftauen macht das nicht rückgängig.',
  'Move the coldest containers to a place between {$low} and {$high}.':
    'Die kältesten Gebinde an einen Platz zwischen {$low} und {$high} bringen.',
  'Measure in the adhesive and enter the reading.':
    'Im Haftmittel messen und den Messwert eingeben.',
  'use any that may have frozen': 'Haftmittel, das gefroren sein kann, nicht verwenden.',
  '{$signal} at {$value}, at or below {$limit}, for {$duration}; what stands there may have frozen and is on hold.':
    '{$signal}: {$value}, bei oder unter {$limit}, seit {$duration}; was dort steht, kann gefroren sein und ist gesperrt.',
  'Adhesive that froze is broken for good, though it may look right once thawed.':
    'Haftmittel, das gefroren war, ist unwiederbringlich zerstört, auch wenn es aufgetaut einwandfrei aussehen kann.',
  'Tag every container that stood there.': 'Jedes Gebinde kennzeichnen, das dort stand.',
  'Move them to a hold area between {$low} and {$high}.':
    'Die Gebinde in einen Sperrbereich zwischen {$low} und {$high} bringen.',
  'Ask quality for a test; only quality lifts a hold.':
    'Die Qualitätssicherung um eine Prüfung bitten; nur die Qualitätssicherung hebt eine Sperre auf.',
  'use adhesive that may have frozen, thawed or not':
    'Kein Haftmittel verwenden, das gefroren sein kann, auch kein aufgetautes.',
  '{$station}: adhesive measured at {$value} at its container’s wall, at or below {$limit}; it may have frozen and is on hold.':
    '{$station}: Haftmittel an der Wand seines Gebindes: {$value} gemessen, bei oder unter {$limit}; es kann gefroren sein und ist gesperrt.',
  'Tag the container; measure its neighbours and enter each reading.':
    'Das Gebinde kennzeichnen; in den benachbarten Gebinden messen und jeden Messwert eingeben.',
  '{$station}: ice, grains or lumps were seen in a container at {$clock}; it is on hold.':
    '{$station}: In einem Gebinde wurden Eis, Körner oder Klumpen gesehen ({$clock}); es ist gesperrt.',
  'Tag the container; look over its neighbours and enter what you see.':
    'Das Gebinde kennzeichnen; die benachbarten Gebinde ansehen und eingeben, was zu sehen ist.',
};
