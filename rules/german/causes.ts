/** German for why a reading is in doubt or not usable (rules/signal/quality.ts). */
import type { Texts } from './texts.ts';

export const causes: Texts = {
  'the clock of this box was in doubt': 'die Uhr dieses Geräts war zweifelhaft',
  'a retained message without a time; it may be old':
    'eine aufbewahrte Nachricht ohne Zeit; sie kann alt sein',
  'calibration overdue': 'Kalibrierung überfällig',
  'changed faster than it plausibly can': 'änderte sich schneller, als es glaubhaft ist',
  'the sensor marked it uncertain': 'der Sensor kennzeichnet ihn als unsicher',
  estimated: 'geschätzt',
  'computed from an uncertain reading': 'aus einem unsicheren Messwert berechnet',
  'another value came for the same time': 'für dieselbe Zeit kam ein anderer Wert',
  'worked out with numbers nobody has confirmed here':
    'mit Zahlen berechnet, die hier niemand bestätigt hat',
  'part of the time it adds up was not observed':
    'ein Teil der Zeit, die er zusammenzählt, blieb ungesehen',
  'its loop current is beyond the measuring range; the true value may be too':
    'sein Schleifenstrom liegt außerhalb des Messbereichs; der wahre Wert vielleicht auch',
  'its cold junction has not been heard of for too long':
    'von seiner Vergleichsstelle kam zu lange nichts',
  'the message could not be read': 'die Nachricht war nicht lesbar',
  'not a finite number': 'keine endliche Zahl',
  'outside what the sensor can read': 'außerhalb dessen, was der Sensor messen kann',
  'its time lies in the future': 'seine Zeit liegt in der Zukunft',
  'the sensor marked it bad': 'der Sensor kennzeichnet ihn als schlecht',
  'computed from a reading that is not usable': 'aus einem nicht verwendbaren Messwert berechnet',
  'the readings lie outside what the formula covers':
    'die Messwerte liegen außerhalb dessen, wofür die Formel gilt',
  'too little has been observed yet': 'noch zu wenig beobachtet',
  'its loop current left its range less than 4 s ago':
    'sein Schleifenstrom verließ den Bereich vor weniger als 4 s',
  'its loop current is 3.6 mA or less: wire broken or transmitter failed':
    'sein Schleifenstrom ist 3,6 mA oder weniger: Drahtbruch oder Messumformer defekt',
  'its loop current is 21 mA or more: short circuit or transmitter failed':
    'sein Schleifenstrom ist 21 mA oder mehr: Kurzschluss oder Messumformer defekt',
  'more than such a sensor can send: sensor or wire broken, most often':
    'mehr, als ein solcher Sensor senden kann: meist Bruch von Sensor oder Leitung',
  'less than such a sensor can send: short circuit, most often':
    'weniger, als ein solcher Sensor senden kann: meist Kurzschluss',
  'its cold junction has no usable reading':
    'seine Vergleichsstelle hat keinen verwendbaren Messwert',
  'the file that works it out failed or is switched off':
    'die Datei, die ihn berechnet, versagte oder ist abgeschaltet',
  'its time lies too far back': 'seine Zeit liegt zu weit zurück',
  'it came in another unit than promised': 'er kam in einer anderen Einheit als vereinbart',
  'late: kept and not judged': 'spät: aufbewahrt, nicht bewertet',
};
