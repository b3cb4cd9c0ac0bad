/** German for the texts of `rules/stations/adhesive-store-signals.ts`. */
import type { Texts } from './texts.ts';

export const adhesiveStoreSignals: Texts = {
  'temperature at the coldest outer wall': 'Temperatur an der kältesten Außenwand',
  'Pt100 in a closed pail of plain water, by the coldest outer wall, near the floor':
    'Pt100 in einem geschlossenen Eimer mit Wasser ohne Zusätze, an der kältesten Außenwand, nahe am Boden',
  'temperature at the floor, where containers stand coldest':
    'Temperatur am Boden, wo Gebinde am kältesten stehen',
  'Pt100 in a closed pail of plain water, on the floor or lowest shelf':
    'Pt100 in einem geschlossenen Eimer mit Wasser ohne Zusätze, auf dem Boden oder dem untersten Regalfach',
  'air temperature of the store': 'Lufttemperatur des Lagers',
  'at the height of the containers, out of draught and sun':
    'auf Höhe der Gebinde, vor Zugluft und Sonne geschützt',
  'relative humidity of the air': 'relative Feuchte der Luft',
  'beside the air temperature': 'neben der Lufttemperatur',
  'temperature outdoors, which tells the frost season':
    'Temperatur im Freien, an der die Frostzeit zu erkennen ist',
  'on the north side of the building, shielded from rain and sun, away from doors and vents':
    'auf der Nordseite des Gebäudes, gegen Regen und Sonne abgeschirmt, entfernt von Türen und Lüftungsöffnungen',
  'temperature of the adhesive at the wall of one container':
    'Temperatur des Haftmittels an der Wand eines einzelnen Gebindes',
  'clean stainless probe in the adhesive, at the container’s wall and near its bottom; write down checked with the container’s name first':
    'sauberer Fühler aus Edelstahl im Haftmittel, an der Wand des Gebindes und nahe an dessen Boden; zuerst „checked“ mit dem Namen des Gebindes eintragen',
  '1 where ice, grains or lumps are seen in a container, else 0':
    '1, wo in einem Gebinde Eis, Körner oder Klumpen zu sehen sind, sonst 0',
  'by eye at the container’s wall; write down checked with the container’s name first':
    'mit dem Auge an der Wand des Gebindes; zuerst „checked“ mit dem Namen des Gebindes eintragen',
  'lowest temperature that the logger of a delivery shows':
    'niedrigste Temperatur, die der Datenlogger einer Lieferung zeigt',
  'logger that travelled between the containers, read at the dock; write down received for each container first':
    'Datenlogger, der zwischen den Gebinden mitgeführt wurde, an der Laderampe ausgelesen; zuerst „received“ für jedes Gebinde eintragen',
  'highest temperature that the logger of a delivery shows':
    'höchste Temperatur, die der Datenlogger einer Lieferung zeigt',
  'the same logger, read with its lowest':
    'derselbe Datenlogger, zusammen mit seinem niedrigsten Wert ausgelesen',
  'coldest air forecast on the way of a delivery that is planned':
    'kälteste vorhergesagte Luft auf dem Weg einer geplanten Lieferung',
  'weather forecast of every place and night on the way, before it is ordered out':
    'Wettervorhersage für jeden Ort und jede Nacht auf dem Weg, bevor die Lieferung abgerufen wird',
  'time from loading to unloading, weekends on the road included':
    'Zeit vom Beladen bis zum Entladen, einschließlich der Wochenenden unterwegs',
  'the carrier’s plan': 'Plan des Spediteurs',
  'This container was taken off the lorry.': 'Dieses Gebinde wurde vom Lkw abgeladen.',
  'whoever takes deliveries in, or the scanner at the dock':
    'wer Lieferungen annimmt, oder der Scanner an der Laderampe',
  'The logger that travelled with this container was read, and its lowest and highest were entered.':
    'Der mit diesem Gebinde mitgeführte Datenlogger wurde ausgelesen, und sein niedrigster und sein höchster Wert wurden eingegeben.',
  'This container went from the dock to its place in the store, or to the hold area.':
    'Dieses Gebinde kam von der Laderampe an seinen Platz im Lager oder in den Sperrbereich.',
  'the storekeeper, or the scanner at the store': 'der Lagerist oder der Scanner am Lager',
  'This container left the store.': 'Dieses Gebinde hat das Lager verlassen.',
  'This container was looked over; what was measured or seen is entered right after.':
    'Dieses Gebinde wurde geprüft; was gemessen oder gesehen wurde, wird gleich danach eingegeben.',
  'The maker filled this container; the time is the date of manufacture on its label.':
    'Der Hersteller hat dieses Gebinde abgefüllt; die Zeit ist das Herstelldatum auf seinem Etikett.',
  'This container was first drawn from.':
    'Aus diesem Gebinde wurde zum ersten Mal etwas entnommen.',
  'whoever draws from it': 'wer daraus entnimmt',
  'The adhesive in this container was let down with water.':
    'Das Haftmittel in diesem Gebinde wurde mit Wasser verdünnt.',
  'whoever lets it down': 'wer es verdünnt',
  'This container is empty, scrapped or sent back.':
    'Dieses Gebinde ist leer, ausgesondert oder zurückgeschickt.',
  'whoever empties it': 'wer es leert',
};
