/** German for what each rule kind judges (rules/kinds/*.ts, `summary`). */
import type { Texts } from './texts.ts';

export const kindSummaries: Texts = {
  'A value outside its limits for longer than its delay.':
    'Ein Wert, der länger als seine Verzögerung außerhalb seiner Grenzwerte liegt.',
  'A value further from its target than allowed, for longer than its delay.':
    'Ein Wert, der länger als seine Verzögerung weiter von seinem Sollwert liegt als erlaubt.',
  'A value on its way to a limit that it will reach within the time to act.':
    'Ein Wert auf dem Weg zu einem Grenzwert, den er in der Zeit erreicht, die zum Handeln nötig ist.',
  'A value that rises or falls too fast, or has lost too much of its level.':
    'Ein Wert, der zu schnell steigt oder fällt oder zu viel von seiner Höhe verloren hat.',
  'A value that has slowly left its own baseline, given or learned.':
    'Ein Wert, der sich langsam von dem entfernt hat, was für ihn üblich ist, vorgegeben oder gelernt.',
  'Readings that no longer scatter about their baseline by chance, as a control chart shows; for hand readings.':
    'Messwerte, die nicht mehr zufällig um ihren üblichen Wert streuen, wie es eine Regelkarte zeigt; für Messungen von Hand.',
  'One of several like sensors reads away from the others; of two, that they disagree.':
    'Einer von mehreren gleichen Sensoren misst abseits der anderen; bei zweien, dass sie einander widersprechen.',
  'Sensors of the same thing read apart although the process has been steady.':
    'Sensoren für dasselbe messen Verschiedenes, obwohl der Prozess gleichmäßig lief.',
  'Whether the metal of a load was hot enough for long enough in the oven, and not too hot or too long.':
    'Ob das Metall einer Charge im Ofen lange genug heiß genug war und weder zu heiß noch zu lange heiß.',
  'A surface hotter than the air beside it and rising by itself.':
    'Eine Oberfläche, die heißer ist als die Luft daneben und von selbst wärmer wird.',
  'A value beyond a limit for too much of a span, all the times added up.':
    'Ein Wert jenseits eines Grenzwerts während eines zu großen Teils einer Zeitspanne, alle Zeiten zusammengezählt.',
  'Something that must run for a given time in every span, as a pump in each day, has run too little.':
    'Etwas, das in jeder Zeitspanne eine bestimmte Zeit laufen muss, wie eine Pumpe an jedem Tag, lief zu wenig.',
  'No usable reading for longer than the site file allows.':
    'Kein verwendbarer Messwert, länger als die Werksdatei erlaubt.',
  'A value that has not moved for longer than such a value ever rests.':
    'Ein Wert, der sich länger nicht bewegt hat, als ein solcher Wert je ruht.',
  'Too long since somebody wrote down that something happened: to a rack, container, lot or shot, or at the place.':
    'Zu lange her, dass jemand aufschrieb, dass etwas geschehen ist: mit einem Gestell, Gebinde, Los oder Schuss oder an der Stelle selbst.',
  'After one thing another did not come in time, or came too soon.':
    'Nach dem einen kam das andere nicht rechtzeitig, oder es kam zu früh.',
  'Somebody wrote down the second of two things before the first had had its time, as a coat over one that still dries; item by item.':
    'Jemand schrieb das zweite von zwei Dingen auf, bevor das erste seine Zeit hatte, etwa eine Schicht über einer, die noch trocknet; Stück für Stück.',
  'A value beyond its limits while things are there; every rack, container, lot or shot that was there with it for the delay is held, one by one.':
    'Ein Wert jenseits seiner Grenzwerte, während etwas da ist; alles, was für die Dauer der Verzögerung dabei war, wird einzeln gesperrt: jedes Gestell, Gebinde oder Los und jeder Schuss.',
  'Something that is on hold is used: a container connected, a rack coated, a lot loaded, until its hold is lifted or its use ends.':
    'Etwas Gesperrtes wird verwendet: ein Gebinde angeschlossen, ein Gestell beschichtet, ein Los eingelegt, bis die Sperre aufgehoben ist oder der Gebrauch endet.',
};
