/** German for the texts of `rules/stations/spray-booth-signals.ts`. */
import type { Texts } from './texts.ts';

export const sprayBoothSignals: Texts = {
  'speed of the air into the booth; what one place reads must be fitted to the survey’s average over its face':
    'Geschwindigkeit der Luft in die Spritzkabine; der Messwert einer Stelle muss an den Mittelwert der Messung über den Eintrittsquerschnitt angepasst sein',
  'behind the filters in the exhaust, clear of overspray, set against the yearly survey over the face. First ask how this area is classified, whether solvent or electrostatic guns are used on this line, and who may drill here: a sensor or radio that is not certified for it can light vapour':
    'hinter den Filtern in der Abluft, frei von Spritznebel, abgeglichen mit der jährlichen Messung über den Eintrittsquerschnitt. Zuerst fragen, wie dieser Bereich nach Explosionsschutz eingestuft ist, ob an dieser Linie Lösemittel oder elektrostatische Spritzpistolen verwendet werden und wer hier bohren darf: Ein Sensor oder Funkgerät ohne Zulassung für diesen Bereich kann Dampf entzünden',
  '1 while the booth’s exhaust is proven to flow, else 0':
    '1, solange der Abluftstrom der Spritzkabine nachgewiesen ist, sonst 0',
  'second contact of the booth’s airflow switch through a relay; never in its interlock. First ask how this area is classified, whether solvent or electrostatic guns are used on this line, and who may drill here: a sensor or radio that is not certified for it can light vapour':
    'zweiter Kontakt des Strömungswächters der Spritzkabine über ein Relais; nie in ihrer Verriegelung. Zuerst fragen, wie dieser Bereich nach Explosionsschutz eingestuft ist, ob an dieser Linie Lösemittel oder elektrostatische Spritzpistolen verwendet werden und wer hier bohren darf: Ein Sensor oder Funkgerät ohne Zulassung für diesen Bereich kann Dampf entzünden',
  'pressure drop across the booth’s exhaust filters':
    'Druckabfall über die Abluftfilter der Spritzkabine',
  'taps on both sides of the filter wall, with purge or trap: plugged ones read 0, as if clean. First ask how this area is classified, whether solvent or electrostatic guns are used on this line, and who may drill here: a sensor or radio that is not certified for it can light vapour':
    'Messanschlüsse auf beiden Seiten der Filterwand, mit Spülung oder Abscheider: verstopfte zeigen 0, als wäre alles sauber. Zuerst fragen, wie dieser Bereich nach Explosionsschutz eingestuft ist, ob an dieser Linie Lösemittel oder elektrostatische Spritzpistolen verwendet werden und wer hier bohren darf: Ein Sensor oder Funkgerät ohne Zulassung für diesen Bereich kann Dampf entzünden',
  '1 while somebody sprays here, pauses of a few minutes included, else 0':
    '1, solange hier jemand spritzt, Pausen von wenigen Minuten eingeschlossen, sonst 0',
  'contact of the guns’ enable or of the robot’s program through a relay, not the single trigger: its bursts are shorter than the delays. First ask how this area is classified, whether solvent or electrostatic guns are used on this line, and who may drill here: a sensor or radio that is not certified for it can light vapour':
    'Kontakt der Freigabe der Spritzpistolen oder des Roboterprogramms über ein Relais, nicht der einzelne Abzug: Seine Spritzstöße sind kürzer als die Verzögerungen. Zuerst fragen, wie dieser Bereich nach Explosionsschutz eingestuft ist, ob an dieser Linie Lösemittel oder elektrostatische Spritzpistolen verwendet werden und wer hier bohren darf: Ein Sensor oder Funkgerät ohne Zulassung für diesen Bereich kann Dampf entzünden',
  '1 while the gun’s trigger is pulled, else 0':
    '1, solange der Abzug der Spritzpistole betätigt ist, sonst 0',
  'flow switch in the gun’s air line, or the robot’s output through a relay. First ask how this area is classified, whether solvent or electrostatic guns are used on this line, and who may drill here: a sensor or radio that is not certified for it can light vapour':
    'Durchflussschalter in der Luftleitung der Spritzpistole oder der Ausgang des Roboters über ein Relais. Zuerst fragen, wie dieser Bereich nach Explosionsschutz eingestuft ist, ob an dieser Linie Lösemittel oder elektrostatische Spritzpistolen verwendet werden und wer hier bohren darf: Ein Sensor oder Funkgerät ohne Zulassung für diesen Bereich kann Dampf entzünden',
  'temperature of the booth’s air': 'Temperatur der Kabinenluft',
  'in the supply plenum, shielded: in overspray it is coated within weeks':
    'in der Zuluftkammer, abgeschirmt: Im Spritznebel ist der Sensor binnen Wochen überzogen',
  'relative humidity of the booth’s air': 'relative Feuchte der Kabinenluft',
  'in the same shield as the air; not near an oven’s mouth':
    'in derselben Abschirmung wie die Lufttemperatur; nicht nahe der Öffnung eines Ofens',
  'temperature of the metal as it comes to the gun; speaks only while a part is there':
    'Temperatur des Metalls, wenn es zur Spritzpistole kommt; meldet nur, solange ein Teil da ist',
  'pyrometer before the gun, set for the bare or primed metal, switched by the part. First ask how this area is classified, whether solvent or electrostatic guns are used on this line, and who may drill here: a sensor or radio that is not certified for it can light vapour':
    'Pyrometer vor der Spritzpistole, eingestellt auf das blanke oder mit Primer beschichtete Metall, vom Teil geschaltet. Zuerst fragen, wie dieser Bereich nach Explosionsschutz eingestuft ist, ob an dieser Linie Lösemittel oder elektrostatische Spritzpistolen verwendet werden und wer hier bohren darf: Ein Sensor oder Funkgerät ohne Zulassung für diesen Bereich kann Dampf entzünden',
  'gauge pressure of the atomising air, at the gun':
    'Überdruck der Zerstäuberluft an der Spritzpistole',
  'at the gun’s inlet with the trigger on; at the regulator it reads too high. First ask how this area is classified, whether solvent or electrostatic guns are used on this line, and who may drill here: a sensor or radio that is not certified for it can light vapour':
    'am Eingang der Spritzpistole bei betätigtem Abzug; am Druckregler ist der Messwert zu hoch. Zuerst fragen, wie dieser Bereich nach Explosionsschutz eingestuft ist, ob an dieser Linie Lösemittel oder elektrostatische Spritzpistolen verwendet werden und wer hier bohren darf: Ein Sensor oder Funkgerät ohne Zulassung für diesen Bereich kann Dampf entzünden',
  'what the gauge reads on the bare surface; 0 where it was zeroed on it':
    'was das Messgerät auf der blanken Oberfläche anzeigt; 0, wenn es dort auf null gestellt wurde',
  'the same uncoated surface, of the same batch and preparation: blasted steel reads as some film, and phosphate too':
    'dieselbe unbeschichtete Oberfläche, aus demselben Los und derselben Vorbehandlung: Gestrahlter Stahl wird als etwas Schicht gemessen, Phosphat ebenso',
  'what the gauge reads on the coat, in the middle':
    'was das Messgerät auf der Schicht anzeigt, in der Mitte',
  'mean of three readings at least, on a flat smooth panel beside the part, dried, one coat; the number of readings and the place in the note':
    'Mittelwert aus mindestens drei Messwerten, auf einem ebenen, glatten Prüfblech neben dem Teil, getrocknet, eine Schicht; Zahl der Messwerte und Stelle in der Notiz',
  'what the gauge reads on the coat, towards the edge':
    'was das Messgerät auf der Schicht anzeigt, zur Kante hin',
  'mean of three readings at least, on a flat smooth panel beside the part, dried, two widths of the probe from the edge: nearer, and on small radii, it is not to be trusted':
    'Mittelwert aus mindestens drei Messwerten, auf einem ebenen, glatten Prüfblech neben dem Teil, getrocknet, zwei Sondenbreiten von der Kante: Näher daran und an kleinen Radien ist dem Messwert nicht zu trauen',
  'what the gauge reads on all coats together':
    'was das Messgerät auf allen Schichten zusammen anzeigt',
  'mean of three readings at least, on a flat smooth panel beside the part, dried':
    'Mittelwert aus mindestens drei Messwerten, auf einem ebenen, glatten Prüfblech neben dem Teil, getrocknet',
  'wet film by comb or wheel': 'Nassschichtdicke, mit Kamm oder Rad gemessen',
  'on the panel at once after the gun; seconds later water has gone':
    'auf dem Prüfblech sofort nach der Spritzpistole; Sekunden später ist schon Wasser verdunstet',
  'hours of spraying since needle and nozzle were changed':
    'Spritzstunden seit dem Wechsel von Nadel und Düse',
  'from the gun’s own counter or the maintenance card':
    'vom eigenen Zähler der Spritzpistole oder von der Wartungskarte',
  'hours of spraying since the air cap was changed': 'Spritzstunden seit dem Wechsel der Luftkappe',
  'speed of the air into the booth, averaged over time':
    'Geschwindigkeit der Luft in die Spritzkabine, über die Zeit gemittelt',
  'the filters’ pressure drop as a share of what clean ones make':
    'Druckabfall der Filter als Anteil dessen, was saubere Filter haben',
  'dry film of this coat, in the middle': 'Trockenschichtdicke dieser Schicht, in der Mitte',
  'dry film of this coat, towards the edge': 'Trockenschichtdicke dieser Schicht, zur Kante hin',
  'dry film of all coats together': 'Trockenschichtdicke aller Schichten zusammen',
  'dry film that the wet film will leave':
    'Trockenschichtdicke, die die Nassschicht hinterlassen wird',
  'dew point of the booth’s air; shown only': 'Taupunkt der Kabinenluft; nur zur Anzeige',
  'time sprayed since the last flush: the first parts after it are thin; where racks are scanned, parts-since-flush counts them':
    'gespritzte Zeit seit dem letzten Spülen: Die ersten Teile danach sind dünn beschichtet; wo Gestelle gescannt werden, zählt parts-since-flush sie',
  'time sprayed since needle and nozzle were changed':
    'gespritzte Zeit seit dem Wechsel von Nadel und Düse',
  'time sprayed since the air cap was changed': 'gespritzte Zeit seit dem Wechsel der Luftkappe',
};
