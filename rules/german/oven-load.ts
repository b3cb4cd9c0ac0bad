/** German for the texts of `rules/stations/oven-load.ts`. */
import type { Texts } from './texts.ts';

export const ovenLoad: Texts = {
  'Parts and racks are hot; gloves as the data sheet says.':
    'Teile und Gestelle sind heiß; Handschuhe nach Datenblatt.',
  // over-dosed
  '{$station}: the heat of this rack, with what it had in ovens before, is worth more than {$high} at the temperature it is counted at, which is all that it may have before rubber.':
    '{$station}: Die Wärme dieses Gestells, zusammen mit der aus früheren Öfen, ist mehr wert als die {$high} bei der Bezugstemperatur, die es vor dem Kautschuk höchstens bekommen darf.',
  'Heat adds up over every oven; a coat that cured before it met the rubber looks perfect and does not hold.':
    'Wärme summiert sich über alle Öfen; eine Schicht, die vernetzt ist, bevor sie auf den Kautschuk traf, sieht einwandfrei aus und haftet nicht.',
  'Tag the rack “hold” at the exit.': 'Gestell an der Ausfahrt mit „gesperrt“ kennzeichnen.',
  'Add from its card what no oven here saw: preheat, earlier passes that nobody scanned, minutes in a hot mould.':
    'Von seiner Karte hinzurechnen, was hier kein Ofen erfasst hat: Vorwärmen, frühere Durchläufe, die niemand gescannt hat, Minuten in einer heißen Form.',
  'The process engineer decides on a trial bond.':
    'Der Prozessingenieur entscheidet anhand einer Probebindung.',
  'bake it again to be sure': 'Nicht noch einmal in den Ofen geben, um sicherzugehen.',
  // profile-late
  '{$station}: {$reached} since somebody wrote down that a temperature logger went through with a full load, of {$required} at most.':
    '{$station}: Seit {$reached} hat niemand aufgeschrieben, dass ein Temperaturlogger mit voller Charge durchgefahren ist; zulässig sind höchstens {$required}.',
  'Nobody knows what the coldest and the hottest part get; the time constant and the dwell rest on an old run.':
    'Niemand weiß, was das kälteste und das heißeste Teil bekommen; Zeitkonstante und Verweilzeit beruhen auf einer alten Fahrt.',
  'Send a logger through with the rack, fitted outside the oven on cold parts: probes welded or drilled on the coldest and hottest corner, the heaviest and the lightest part.':
    'Einen Temperaturlogger mit dem Gestell durchfahren lassen, außerhalb des Ofens an kalten Teilen angebracht: Fühler angeschweißt oder eingebohrt an der kältesten und der heißesten Ecke, am schwersten und am leichtesten Teil.',
  'Compare with the run before; fit the time constant and set the dwell anew.':
    'Mit der vorigen Fahrt vergleichen; Zeitkonstante anpassen und Verweilzeit neu einstellen.',
  'Write down that it was done.': 'Aufschreiben, dass es getan wurde.',
  'tape a bead to the part: it reads air':
    'Die Messperle nicht mit Klebeband am Teil befestigen: So misst sie die Luft.',
  'reach into the oven for a logger that hangs':
    'Nicht nach einem hängen gebliebenen Temperaturlogger in den Ofen greifen.',
  // signals
  'temperature of the metal of the heaviest part': 'Temperatur des Metalls des schwersten Teils',
  'welded or drilled in the heaviest section of a part or a dummy that travels with the load; with infrared heat a pyrometer set for the coated part':
    'angeschweißt oder eingebohrt im dicksten Querschnitt eines Teils oder einer Attrappe, die mit der Charge fährt; bei Infrarotheizung ein Pyrometer, auf das beschichtete Teil eingestellt',
  '1 while a load is in the oven, else 0; it opens and closes an oven run':
    '1, solange eine Charge im Ofen ist, sonst 0; eröffnet und beendet eine Ofenfahrt',
  'light barrier or rack switch at the mouth, or the control’s own contact, through a relay':
    'Lichtschranke oder Gestellschalter an der Einfahrt oder der Kontakt der Steuerung, über ein Relais',
  'temperature of the air beside the load, from which its metal is worked out':
    'Temperatur der Luft neben der Charge, aus der die ihres Metalls berechnet wird',
  'at part height beside the parts: of an oven of one zone its return stream, of several zones a sensor that travels with the load':
    'auf Höhe der Teile, neben ihnen: bei einem Ofen mit einer Zone der Rückluftstrom, bei mehreren Zonen ein Sensor, der mit der Charge fährt',
  'temperature of the parts as they come in': 'Temperatur der Teile bei der Einfahrt',
  'pyrometer at the mouth, set for the coated part':
    'Pyrometer an der Einfahrt, auf das beschichtete Teil eingestellt',
  '1 while the conveyor moves, else 0': '1, solange der Förderer läuft, sonst 0',
  'motion switch on the chain or shaft, not the motor’s contactor':
    'Bewegungsschalter an Kette oder Welle, nicht das Schütz des Motors',
  '1 while the oven heats, else 0': '1, solange der Ofen heizt, sonst 0',
  'dry contact of the control through a relay; never in the burner’s safety chain':
    'potentialfreier Kontakt der Steuerung über ein Relais; nie in der Sicherheitskette des Brenners',
  '1 while the exhaust is proven to flow, else 0':
    '1, solange nachgewiesen ist, dass die Abluft strömt, sonst 0',
  'a second contact of the airflow switch through a relay; never in the safety chain':
    'ein zweiter Kontakt des Strömungswächters über ein Relais; nie in der Sicherheitskette',
  'pressure drop that the exhaust’s flow makes': 'Druckabfall, den die Strömung der Abluft erzeugt',
  'across the exhaust fan or a fixed orifice; keep the taps clear':
    'über dem Abluftventilator oder einer festen Blende; Messanschlüsse frei halten',
  // worked out
  'temperature of the metal, worked out from the air beside the load':
    'Temperatur des Metalls, berechnet aus der Luft neben der Charge',
  'what the heat of this load is worth, as time at the temperature it is counted at':
    'was die Wärme dieser Charge wert ist, als Zeit bei der Bezugstemperatur',
  'what all the heat is worth that the rack inside has had, in every oven of the site it was scanned into, as time at the temperature it is counted at':
    'was alle Wärme wert ist, die das Gestell im Ofen bekommen hat, in jedem Ofen des Werks, in den es eingescannt wurde, als Zeit bei der Bezugstemperatur',
  // marks
  'This rack went into the oven.': 'Dieses Gestell ist in den Ofen eingefahren.',
  'whoever loads it, or the scanner at the mouth':
    'wer es in den Ofen gibt, oder der Scanner an der Einfahrt',
  'This rack came out of the oven.': 'Dieses Gestell ist aus dem Ofen ausgefahren.',
  'whoever unloads it, or the scanner at the exit':
    'wer es herausnimmt, oder der Scanner an der Ausfahrt',
  'Other parts hang on this rack; the heat it had before is not theirs.':
    'An diesem Gestell hängen andere Teile; die Wärme, die es vorher bekam, ist nicht ihre.',
  'whoever hangs them, where no other scan says so':
    'wer sie aufhängt, wo kein anderer Scan es sagt',
  'A temperature logger went through with a full load: probes on the coldest and hottest corner, the heaviest and the lightest part.':
    'Ein Temperaturlogger ist mit voller Charge durchgefahren: Fühler an der kältesten und der heißesten Ecke, am schwersten und am leichtesten Teil.',
  'the process engineer, for each new part and each quarter':
    'der Prozessingenieur, für jedes neue Teil und in jedem Quartal',
};
