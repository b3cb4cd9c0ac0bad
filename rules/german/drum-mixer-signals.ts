/** German for the texts of `rules/stations/drum-mixer-signals.ts`. */
import type { Texts } from './texts.ts';

export const drumMixerSignals: Texts = {
  'speed of the agitator’s shaft': 'Drehzahl der Rührwerkswelle',
  'pick-up on the shaft below the coupling, two targets or more; never at the motor. At 20 a minute time the pulses over 30 s, not one by one':
    'Aufnehmer an der Welle unterhalb der Kupplung, zwei oder mehr Schaltmarken; nie am Motor. Bei 20 je Minute die Impulse über 30 s auswerten, nicht einzeln',
  '1 while a drum is connected and in service, else 0: 0 during a change and while it is cranked by hand':
    '1, solange ein Fass angeschlossen und in Betrieb ist, sonst 0: 0 während eines Wechsels und solange von Hand durchgedreht wird',
  'contact at the drum’s connection, or a switch people set':
    'Kontakt am Anschluss des Fasses oder ein Schalter, den jemand von Hand stellt',
  '1 while adhesive is drawn from the drum, else 0':
    '1, solange Haftmittel aus dem Fass entnommen wird, sonst 0',
  'contact of the feed pump or its valve, through a relay':
    'Kontakt der Förderpumpe oder ihres Ventils, über ein Relais',
  'level of the adhesive above the drum’s floor':
    'Füllstand des Haftmittels über dem Boden des Fasses',
  'from above, clear of the shaft; wetted parts stainless or plastic':
    'von oben, mit Abstand zur Welle; medienberührte Teile aus Edelstahl oder Kunststoff',
  'air temperature of the mixing room': 'Lufttemperatur im Mischraum',
  'at the height of the drum, out of draught and sun':
    'in Höhe des Fasses, vor Zugluft und Sonne geschützt',
  'speed of the blade’s tip, which is what shears; 0.4 to 0.6 m/s of a 0.4 m drum blade':
    'Geschwindigkeit der Rührblattspitze, die das Scheren bewirkt; 0,4 bis 0,6 m/s bei einem Fassrührblatt von 0,4 m',
  'how long the agitator has mixed this container since it was connected':
    'wie lange das Rührwerk dieses Gebinde seit dem Anschließen gemischt hat',
  'temperature of the adhesive while it is stirred, worked out from the air':
    'Temperatur des Haftmittels, solange es gerührt wird, aus der Lufttemperatur errechnet',
  'This container was connected: in date, not on hold, its label scanned; its mixing time begins.':
    'Dieses Gebinde wurde angeschlossen: Haltbarkeit nicht abgelaufen, nicht gesperrt, Etikett eingelesen; seine Mischzeit beginnt.',
  'the operator, or the scanner, at each change of container':
    'der Bediener oder der Scanner, bei jedem Gebindewechsel',
  'This drum was cranked by hand until its bottom was loose, before its agitator started.':
    'Das Rührwerk dieses Fasses wurde von Hand durchgedreht, bis der Bodensatz gelöst war, bevor es anlief.',
  'the operator': 'der Bediener',
};
