/** German for the texts of `rules/stations/preparation-signals.ts`. */
import type { Texts } from './texts.ts';

export const preparationSignals: Texts = {
  'temperature of the air where prepared parts stand':
    'Temperatur der Luft, wo vorbereitete Teile stehen',
  'beside the racks of prepared parts, shielded, away from blast cabinet and washer':
    'neben den Gestellen mit vorbereiteten Teilen, abgeschirmt, nicht in der Nähe von Strahlkabine und Waschanlage',
  'relative humidity of that air': 'relative Feuchte dieser Luft',
  'in the same shield as the air; out of blast dust and of the washer’s steam':
    'in derselben Abschirmung wie die Lufttemperatur; außerhalb von Strahlstaub und Dampf der Waschanlage',
  'temperature of the coldest prepared metal': 'Temperatur des kältesten vorbereiteten Metalls',
  'contact probe on the heaviest part of the rack that came last, or on a dummy that travels with it':
    'Kontaktfühler am schwersten Teil des Gestells, das zuletzt kam, oder an einer Attrappe, die mit ihm mitläuft',
  'gauge pressure at the blast nozzle': 'Überdruck an der Strahldüse',
  'as near to the nozzle as the machine allows; a needle gauge through the hose tells most':
    'so nahe an der Düse, wie es die Anlage zulässt; ein Nadelmanometer, durch den Schlauch gestochen, sagt am meisten',
  '1 while the blast runs, else 0': '1, solange gestrahlt wird, sonst 0',
  'contact of the blast machine’s control through a relay, never in its door’s safety chain':
    'Kontakt der Steuerung der Strahlanlage über ein Relais, nie in der Sicherheitskette ihrer Tür',
  'profile of the blasted metal, peak to valley':
    'Rauheitsprofil des gestrahlten Metalls, von der Spitze bis zum Tal',
  'replica tape or stylus on a flat of a part from this rack, each shift':
    'Abdruckband oder Tastschnittgerät auf einer ebenen Fläche eines Teils von diesem Gestell, jede Arbeitsschicht',
  '1 where blast media shaken in clean water leave a film or a sheen, else 0':
    '1, wenn Strahlmittel, in sauberem Wasser geschüttelt, einen Film oder Schimmer hinterlässt, sonst 0',
  'a cupful from below the separator, each shift and after each top-up':
    'ein Becher voll von unterhalb des Abscheiders, jede Arbeitsschicht und nach jedem Nachfüllen',
  '1 where rinse water breaks up on the metal within a minute, 0 where it stays whole':
    '1, wenn das Spülwasser auf dem Metall innerhalb einer Minute aufreißt, 0, wenn es geschlossen bleibt',
  'ASTM F22, on a part of this rack after the last rinse or after degreasing':
    'ASTM F22, an einem Teil dieses Gestells nach der letzten Spüle oder nach dem Entfetten',
  '1 where the prepared metal shows any rust bloom, else 0':
    '1, wenn das vorbereitete Metall irgendwo Flugrost zeigt, sonst 0',
  'in good light, on the rack that waited longest, before it is coated':
    'bei gutem Licht, an dem Gestell, das am längsten gewartet hat, bevor es beschichtet wird',
  'weight of the phosphate coat over its area': 'Gewicht der Phosphatschicht je Fläche',
  'a panel of the same steel, weighed before and after stripping, each shift':
    'ein Prüfblech aus demselben Stahl, vor und nach dem Entschichten gewogen, jede Arbeitsschicht',
  'total acid of the phosphate bath, in points of its titration':
    'Gesamtsäure des Phosphatbads, in Punkten seiner Titration',
  'a sample of the bath at its working temperature, titrated by its data sheet':
    'eine Probe des Bads bei Arbeitstemperatur, nach seinem Datenblatt titriert',
  'conductivity of the last rinse': 'Leitfähigkeit der letzten Spüle',
  'in the overflow of the last rinse, clear of foam; or by hand with a meter in a fresh sample':
    'im Überlauf der letzten Spüle, frei von Schaum; oder von Hand mit einem Messgerät in einer frischen Probe',
  'conductivity of the deionised water as it is drawn for rinse, bath and flush':
    'Leitfähigkeit des vollentsalzten Wassers, wie es für Spüle, Bad und Durchspülen entnommen wird',
  'at the tap it is drawn from, after a litre has run; meter checked on its standard':
    'am Hahn, aus dem es entnommen wird, nachdem ein Liter gelaufen ist; Messgerät an seinem Standard geprüft',
  'how much warmer the coldest metal is than the dew point of the air around it':
    'um wie viel das kälteste Metall wärmer ist als der Taupunkt der Luft ringsum',
  'dew point of that air; shown only': 'Taupunkt dieser Luft; nur zur Anzeige',
  'The parts of this rack were degreased.': 'Die Teile dieses Gestells wurden entfettet.',
  'The parts of this rack were blasted.': 'Die Teile dieses Gestells wurden gestrahlt.',
  'The parts of this rack were phosphated, or given another conversion coat.':
    'Die Teile dieses Gestells wurden phosphatiert oder erhielten eine andere Konversionsschicht.',
  'The parts of this rack had their last rinse and went to dry.':
    'Die Teile dieses Gestells waren in der letzten Spüle und kamen zum Trocknen.',
  'This rack is the one whose readings are entered next: bloom, water-break, profile, phosphate.':
    'Dieses Gestell ist das, dessen Messwerte als Nächstes eingetragen werden: Flugrost, Wasserbruchtest, Rauheitsprofil, Phosphat.',
  'The parts of this rack were given their first coat.':
    'Die Teile dieses Gestells erhielten ihre erste Schicht.',
  'Blast media were changed or topped up; which, and how much, in a note.':
    'Strahlmittel wurde gewechselt oder nachgefüllt; welches und wie viel, in einer Notiz.',
  'The checks of the shift were made and entered: blast profile and pressure, media, water-break, bath, last rinse.':
    'Die Prüfungen der Arbeitsschicht wurden gemacht und eingetragen: Rauheitsprofil und Strahldruck, Strahlmittel, Wasserbruchtest, Bad, letzte Spüle.',
  'the preparer, or the scanner there': 'wer die Teile vorbereitet, oder der Scanner dort',
  'the preparer, before the readings': 'wer die Teile vorbereitet, vor den Messwerten',
  'the sprayer or dipper, or the scanner there': 'wer spritzt oder taucht, oder der Scanner dort',
  'the preparer': 'wer die Teile vorbereitet',
  'the preparer, once each shift': 'wer die Teile vorbereitet, einmal je Arbeitsschicht',
};
