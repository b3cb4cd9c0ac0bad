/** German for the texts of `rules/stations/adhesive-store-goods.ts`. */
import type { Texts } from './texts.ts';

export const adhesiveStoreGoods: Texts = {
  '{$signal} at {$value}, above {$limit}, for {$duration}.':
    '{$signal}: {$value}, über {$limit}, seit {$duration}.',
  'Heat ages the adhesive: it thickens or gels, and its shelf life shortens.':
    'Wärme lässt das Haftmittel altern: Es dickt ein oder geliert, und seine Haltbarkeit verkürzt sich.',
  'Confirm with a second thermometer at the containers.':
    'Mit einem zweiten Thermometer bei den Gebinden bestätigen.',
  'Cool the store: shade, ventilation, doors against the sun.':
    'Lager kühlen: beschatten, lüften, Türen gegen die Sonne schließen.',
  'Have the process engineer work out the use-by date anew; heat may shorten it, never lengthen it.':
    'Das Haltbarkeitsdatum vom Prozessingenieur neu berechnen lassen; Wärme darf es nur verkürzen, nie verlängern.',
  'extend a date': 'Kein Haltbarkeitsdatum verlängern.',
  '{$station}: the logger of a delivery shows {$value}; the limit is {$limit}. What came with it is on hold.':
    '{$station}: Der Datenlogger einer Lieferung zeigt {$value}; der Grenzwert ist {$limit}. Was mit ihm kam, ist gesperrt.',
  'Adhesive that froze or overheated on the way looks right and is spoilt.':
    'Haftmittel, das unterwegs gefroren oder überhitzt worden ist, sieht einwandfrei aus und ist verdorben.',
  'Measure at the wall of each drum and enter the readings; keep the logger.':
    'An der Wand jedes Fasses messen und die Messwerte eingeben; den Datenlogger aufbewahren.',
  'Tag them all and put them in a hold area between {$low} and {$high}.':
    'Alle Gebinde kennzeichnen und in einen Sperrbereich zwischen {$low} und {$high} bringen.',
  'Tell quality and the buyer: the carrier must hear of it now.':
    'Qualitätssicherung und Einkauf informieren: Der Spediteur muss es jetzt erfahren.',
  'leave it on a cold or sunny dock':
    'Die Lieferung nicht auf einer kalten oder sonnigen Laderampe stehen lassen.',
  'send it back before quality has the logger’s record':
    'Die Lieferung nicht zurückschicken, bevor die Qualitätssicherung die Aufzeichnung des Datenloggers hat.',
  '{$station}: container {$item} came in the frost season {$duration} ago, and nobody has read a logger that travelled with it.':
    '{$station}: Gebinde {$item} kam vor {$duration} in der Frostzeit an, und niemand hat einen mitgeführten Datenlogger ausgelesen.',
  'Nobody knows whether it froze on the way; it may look right and be spoilt.':
    'Niemand weiß, ob es unterwegs gefroren ist; es kann einwandfrei aussehen und verdorben sein.',
  'Find the logger and enter its lowest and highest, then write down that it was read.':
    'Den Datenlogger suchen und seinen niedrigsten und höchsten Wert eingeben, dann eintragen, dass er ausgelesen wurde.',
  'Without one: measure at the drum’s wall, tag it “hold”, and ask quality for a test.':
    'Ohne Datenlogger: an der Wand des Fasses messen, es mit „gesperrt“ kennzeichnen und die Qualitätssicherung um eine Prüfung bitten.',
  'Tell the buyer: in winter each delivery needs a logger.':
    'Einkauf informieren: Im Winter braucht jede Lieferung einen Datenlogger.',
  'take a warm wall for proof that it never froze':
    'Eine warme Wand nicht als Beweis nehmen, dass das Haftmittel nie gefroren war.',
  '{$station}: container {$item} came in the frost season {$reached} ago, and nobody has read a logger that travelled with it.':
    '{$station}: Gebinde {$item} kam vor {$reached} in der Frostzeit an, und niemand hat einen mitgeführten Datenlogger ausgelesen.',
  '{$station}: on the way planned, in the coldest air forecast, the wall of an unheated drum falls below {$low} before it arrives.':
    '{$station}: Auf dem geplanten Weg liegt die Wandtemperatur eines unbeheizten Fasses in der kältesten vorhergesagten Luft schon vor der Ankunft unter {$low}.',
  'The delivery may freeze on the road, or over a weekend in a yard.':
    'Die Lieferung kann auf der Straße gefrieren, oder über ein Wochenende auf einem Hof.',
  'Have it sent another day, on a shorter way, or heated.':
    'Die Lieferung an einem anderen Tag, auf kürzerem Weg oder beheizt schicken lassen.',
  'Have a logger sent with it, between the drums.':
    'Einen Datenlogger mitschicken lassen, zwischen den Fässern.',
  'Have it met at the dock: measure at the wall of each drum.':
    'Die Lieferung an der Laderampe in Empfang nehmen lassen: an der Wand jedes Fasses messen.',
  'count on insulation alone over a weekend':
    'Sich über ein Wochenende nicht allein auf eine Isolierung verlassen.',
  'Container {$item}, made {$clock}, is {$reached} old; it keeps {$required}.':
    'Gebinde {$item}, hergestellt {$clock}, ist {$reached} alt; es ist {$required} haltbar.',
  'Adhesive past its date may look right; film and bond are weak.':
    'Haftmittel nach Ablauf seines Datums kann einwandfrei aussehen; Schicht und Bindung sind schwach.',
  'Use the oldest first while its date lasts; past it, take it off line.':
    'Das älteste zuerst verbrauchen, solange sein Datum gilt; danach aus der Linie nehmen.',
  'Tag it “hold” and ask quality for the retest that the data sheet names.':
    'Das Gebinde mit „gesperrt“ kennzeichnen und die Qualitätssicherung um die Nachprüfung bitten, die das Datenblatt nennt.',
  'Without a retest: have it disposed of by the data sheet and the site’s rules.':
    'Ohne Nachprüfung: nach dem Datenblatt und den Vorschriften des Werks entsorgen lassen.',
  'put a new date on it': 'Das Gebinde nicht mit einem neuen Datum versehen.',
  'blend it into fresh adhesive': 'Das Haftmittel nicht in frisches einmischen.',
  'Container {$item} has been in use for {$reached}, since {$clock}; in use it keeps {$required}.':
    'Gebinde {$item} ist seit {$reached} in Gebrauch, seit {$clock}; in Gebrauch ist es {$required} haltbar.',
  'Container {$item} was let down {$reached} ago, at {$clock}; let down it keeps {$required}.':
    'Gebinde {$item} wurde vor {$reached} verdünnt ({$clock}); verdünnt ist es {$required} haltbar.',
};
