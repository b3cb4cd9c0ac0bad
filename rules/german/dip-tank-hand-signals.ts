/** German for the texts of `rules/stations/dip-tank-hand-signals.ts`. */
import type { Texts } from './texts.ts';

export const dipTankHandSignals: Texts = {
  'density of the bath, of a sample without foam, stirred':
    'Dichte des Bads, an einer gerührten Probe ohne Schaum',
  'hydrometer or pycnometer in a sample from the moving stream; foam settled, stirred, read 20 s after it rests; with it enter sample-temperature':
    'Aräometer oder Pyknometer in einer Probe aus dem bewegten Strom; Schaum zusammengefallen, gerührt, 20 s nachdem es zur Ruhe gekommen ist, abgelesen; dazu sample-temperature eintragen',
  'temperature of the sample as its density was read':
    'Temperatur der Probe, als ihre Dichte abgelesen wurde',
  'thermometer in that sample, before it is poured back':
    'Thermometer in dieser Probe, bevor sie zurückgegossen wird',
  'dry film of a panel or part drawn from the tank':
    'Trockenschichtdicke eines Prüfblechs oder Teils, das aus dem Becken gezogen wurde',
  'film gauge on the dried panel, less its base reading on the bare metal of the same batch; several places, their mean':
    'Schichtdickenmessgerät auf dem getrockneten Prüfblech, abzüglich seines Grundwerts auf dem blanken Metall derselben Charge; mehrere Stellen, ihr Mittelwert',
  'pH of the bath': 'pH-Wert des Bads',
  'pH meter, calibrated at each use, in a sample at the bath’s temperature':
    'pH-Messgerät, bei jedem Gebrauch kalibriert, in einer Probe bei der Temperatur des Bads',
  'conductivity of the bath, which rises with what parts carry in':
    'Leitfähigkeit des Bads; sie steigt mit dem, was Teile einschleppen',
  'conductivity meter at its reference temperature, in the same sample':
    'Leitfähigkeitsmessgerät bei seiner Bezugstemperatur, in derselben Probe',
  'viscosity of the bath at one spindle, speed and temperature':
    'Viskosität des Bads bei ein und derselben Spindel, Drehzahl und Temperatur',
  'rotational viscometer, always the same spindle, speed and temperature; a flow cup misleads with a dispersion':
    'Rotationsviskosimeter, immer dieselbe Spindel, Drehzahl und Temperatur; ein Auslaufbecher führt bei einer Dispersion in die Irre',
  '1 where foam stands on the bath, else 0': '1, wenn Schaum auf dem Bad steht, sonst 0',
  'by eye at the tank, from outside the guard':
    'nach Augenschein am Becken, von außerhalb der Schutzeinrichtung',
  '1 where skin or lumps are seen on the bath, else 0':
    '1, wenn Haut oder Klumpen auf dem Bad zu sehen sind, sonst 0',
  'by eye at the tank, from outside the guard, in the corners where it stands still':
    'nach Augenschein am Becken, von außerhalb der Schutzeinrichtung, in den Ecken, wo das Bad stillsteht',
  'conductivity of the water that is put in': 'Leitfähigkeit des Wassers, das zugegeben wird',
  'meter in the deionised water’s line, or a sample at each make-up':
    'Messgerät in der Leitung des vollentsalzten Wassers oder eine Probe bei jeder Ergänzung',
};
