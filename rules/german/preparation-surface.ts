/** German for the texts of `rules/stations/preparation-surface.ts`. */
import type { Texts } from './texts.ts';

export const preparationSurface: Texts = {
  'Clean dry gloves; wear what the data sheets of cleaner and bath ask for.':
    'Saubere, trockene Handschuhe; Schutzausrüstung tragen, wie die Datenblätter von Reiniger und Bad sie verlangen.',
  // rust-bloom
  '{$station}: rust bloom was seen on prepared metal at {$clock}.':
    '{$station}: Flugrost auf vorbereitetem Metall gesehen ({$clock}).',
  'The coat bonds to the rust and not to the steel.':
    'Die Schicht bindet an den Rost und nicht an den Stahl.',
  'Coat nothing from this rack; tag it “hold”.':
    'Nichts von diesem Gestell beschichten; Gestell mit „gesperrt“ kennzeichnen.',
  'See whether racks that waited as long show it too.':
    'Nachsehen, ob Gestelle, die ebenso lange gewartet haben, ihn auch zeigen.',
  'Write down time since blast, humidity and where it shows; the process engineer decides.':
    'Zeit seit dem Strahlen, Luftfeuchte und Ort des Flugrosts aufschreiben; der Prozessingenieur entscheidet.',
  'wipe it off and coat': 'Nie den Flugrost abwischen und dann beschichten.',
  'coat over it because it is light':
    'Nicht darüber beschichten, auch nicht, wenn der Flugrost leicht ist.',
  // water-break
  '{$station}: the water film broke on the metal at {$clock}; it is not clean.':
    '{$station}: Der Wasserfilm riss auf dem Metall auf ({$clock}); es ist nicht sauber.',
  'Oil or residue of cleaner stays under the coat, and whole faces come off bare.':
    'Öl oder Reste des Reinigers bleiben unter der Schicht, und ganze Flächen lösen sich blank ab.',
  'Tag the rack “hold”; degrease it again by the instruction and repeat the test.':
    'Gestell mit „gesperrt“ kennzeichnen; nach Anweisung erneut entfetten und den Test wiederholen.',
  'Check the cleaner’s strength, its temperature and the oil that floats on it.':
    'Konzentration und Temperatur des Reinigers und das Öl prüfen, das auf ihm schwimmt.',
  'Hold what was cleaned since the last good test until it is explained.':
    'Alles, was seit dem letzten guten Test gereinigt wurde, sperren, bis die Ursache geklärt ist.',
  'blast over oil: the media carry it on':
    'Nicht über Öl strahlen: Das Strahlmittel trägt es weiter.',
  'wipe it with a shop rag': 'Nicht mit einem Werkstattlappen abwischen.',
  // media-oily
  '{$station}: blast media left oil on water at {$clock}.':
    '{$station}: Das Strahlmittel hinterließ Öl auf dem Wasser ({$clock}).',
  'Every part blasted with oily media gets an oily surface that looks clean.':
    'Jedes Teil, das mit öligem Strahlmittel gestrahlt wird, bekommt eine ölige Oberfläche, die sauber aussieht.',
  'Stop blasting; tag what was blasted since the last clean test “hold”.':
    'Strahlen einstellen; alles, was seit dem letzten ölfreien Test gestrahlt wurde, mit „gesperrt“ kennzeichnen.',
  'Have the media changed and the machine cleaned; find where the oil came from: parts, or the air.':
    'Strahlmittel wechseln und Anlage reinigen lassen; herausfinden, woher das Öl kam: von Teilen oder aus der Luft.',
  'Make a water-break test on the first parts after it.':
    'An den ersten Teilen danach einen Wasserbruchtest machen.',
  'dilute it with new media': 'Das ölige Strahlmittel nicht mit neuem verdünnen.',
  'Blast machine: isolate, vent and lock out by local rules before any work on it.':
    'Strahlanlage: vor jeder Arbeit daran nach den örtlichen Vorschriften von allen Energiequellen trennen, drucklos machen und gegen Wiedereinschalten sichern.',
  // blast-profile
  '{$station}: blast profile at {$value}; the limit is {$limit}.':
    '{$station}: Rauheitsprofil bei {$value}; Grenzwert {$limit}.',
  'Too smooth, the coat has no hold; too rough, its peaks stand bare and rust.':
    'Zu glatt, und die Schicht hat keinen Halt; zu rau, und die Spitzen stehen blank und rosten.',
  'Measure again on three flats of the rack.': 'An drei ebenen Flächen des Gestells erneut messen.',
  'Check media size and age and the blast pressure; have the nozzle looked over, vented and locked out.':
    'Körnung und Alter des Strahlmittels und den Strahldruck prüfen; die Düse prüfen lassen, drucklos und gegen Wiedereinschalten gesichert.',
  'Tag the rack “hold”; the process engineer decides.':
    'Gestell mit „gesperrt“ kennzeichnen; der Prozessingenieur entscheidet.',
  'make up for it with a thicker coat': 'Das nicht durch eine dickere Schicht ausgleichen.',
  // blast-pressure
  '{$station}: blast pressure at {$value}, {$difference} from {$reference}, for {$duration}.':
    '{$station}: Strahldruck bei {$value}, {$difference} Abweichung von {$reference}, seit {$duration}.',
  'The profile changes with the pressure, and the hold of the coat with it.':
    'Mit dem Druck ändert sich das Rauheitsprofil und damit der Halt der Schicht.',
  'Read header and regulator; have the nozzle looked over for wear, vented and locked out.':
    'Druck an Hauptleitung und Druckregler ablesen; die Düse auf Verschleiß prüfen lassen, drucklos und gegen Wiedereinschalten gesichert.',
  'Bring it back at its regulator.': 'Den Druck am Druckregler wieder auf den Sollwert bringen.',
  'Measure the profile of the next rack.': 'Das Rauheitsprofil des nächsten Gestells messen.',
  'make up for it with a longer blast, unmeasured':
    'Das nicht ohne Messung durch längeres Strahlen ausgleichen.',
  // dew-margin
  '{$station}: margin of the coldest metal over the dew point {$value}, below {$limit}, for {$duration}; under zero it is wet.':
    '{$station}: Abstand des kältesten Metalls zum Taupunkt {$value}, unter {$limit}, seit {$duration}; unter null ist es nass.',
  'Water settles on cold metal; bare steel rusts and the coat lies on water.':
    'Wasser schlägt sich auf kaltem Metall nieder; blanker Stahl rostet, und die Schicht liegt auf Wasser.',
  'Keep cold parts wrapped until they are as warm as the room.':
    'Kalte Teile verpackt lassen, bis sie so warm sind wie der Raum.',
  'Close gates and doors; dry or warm the air.':
    'Tore und Türen schließen; Luft trocknen oder erwärmen.',
  'Check the racks that stood here for bloom before they are coated.':
    'Gestelle, die hier standen, auf Flugrost prüfen, bevor sie beschichtet werden.',
  'dry parts with shop air': 'Teile nicht mit Werksdruckluft trocknen.',
  'coat metal that feels damp': 'Kein Metall beschichten, das sich feucht anfühlt.',
};
