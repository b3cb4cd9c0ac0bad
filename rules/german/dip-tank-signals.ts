/** German for the texts of `rules/stations/dip-tank-signals.ts`. */
import type { Texts } from './texts.ts';

export const dipTankSignals: Texts = {
  'temperature of the bath': 'Temperatur des Bads',
  'Pt100 at mid-depth in the moving stream, away from the exchanger':
    'Pt100 in halber Tiefe im bewegten Strom, abseits des Wärmetauschers',
  'solids of the bath by mass, from an oven test or an instrument in the loop':
    'Feststoffgehalt des Bads nach Masse, aus einer Ofenprüfung oder von einem Messgerät im Kreislauf',
  'oven test (ISO 3251) of a stirred sample without foam from the moving stream; where there is a density instead, it is worked out':
    'Ofenprüfung (ISO 3251) einer gerührten Probe ohne Schaum aus dem bewegten Strom; wo es stattdessen eine Dichte gibt, wird der Feststoffgehalt errechnet',
  'level of the tank above a mark it shares with the weir':
    'Füllstand des Beckens über einer Marke, die es mit dem Überlauf gemeinsam hat',
  'from above, clear of foam; wetted parts stainless or plastic':
    'von oben, frei von Schaum; medienberührte Teile aus Edelstahl oder Kunststoff',
  'level behind the return weir above the same mark':
    'Füllstand hinter dem Überlauf des Rücklaufs über derselben Marke',
  'from above, behind the weir': 'von oben, hinter dem Überlauf',
  'flow of the circulation': 'Durchfluss der Umwälzung',
  'magnetic meter after the pump; wetted parts stainless or plastic':
    'magnetisch-induktiver Durchflussmesser nach der Pumpe; medienberührte Teile aus Edelstahl oder Kunststoff',
  'strokes of the circulation’s diaphragm pump': 'Hübe der Membranpumpe der Umwälzung',
  'stroke counter on the pump or its air valve': 'Hubzähler an der Pumpe oder ihrem Luftventil',
  'pressure drop across the loop’s 300 µm filter': 'Druckabfall am 300-µm-Filter des Kreislaufs',
  'across the filter; keep the taps clear': 'vor und nach dem Filter; Messanschlüsse frei halten',
  'speed at which parts leave the bath': 'Geschwindigkeit, mit der Teile das Bad verlassen',
  'encoder or pulse at the hoist or the conveyor over the tank':
    'Drehgeber oder Impulsgeber am Hubwerk oder am Förderer über dem Becken',
  '1 while parts are drawn out of the bath, else 0':
    '1, während Teile aus dem Bad gezogen werden, sonst 0',
  'contact of the hoist’s or the conveyor’s control, through a relay':
    'Kontakt der Steuerung des Hubwerks oder des Förderers, über ein Relais',

  // marks
  'This rack came to the tank and is dipped next.':
    'Dieses Gestell kam an das Becken und wird als Nächstes getaucht.',
  'the operator at the tank, or the scanner at the hoist':
    'der Bediener am Becken oder der Scanner am Hubwerk',
  'Adhesive of this lot was put into the tank.':
    'Haftmittel dieses Loses wurde in das Becken gegeben.',
  'whoever puts it in': 'wer es hineingibt',
  'The tank was filled anew.': 'Das Becken wurde neu gefüllt.',
  'whoever fills it': 'wer es füllt',
  'Water or adhesive was put in to bring level or solids back; how much in a note.':
    'Wasser oder Haftmittel wurde zugegeben, um Füllstand oder Feststoffgehalt wiederherzustellen; wie viel, in einer Notiz.',
  'whoever makes it up': 'wer es ergänzt',
  'A panel was drawn, dried and measured, and its film is good.':
    'Ein Prüfblech wurde gezogen, getrocknet und gemessen, und seine Schicht ist gut.',
  'the operator who measured it': 'der Bediener, der es gemessen hat',
  'The loop’s filter was changed; what it caught in a note.':
    'Der Filter des Kreislaufs wurde gewechselt; was er aufgefangen hat, in einer Notiz.',
  'whoever changed it': 'wer ihn gewechselt hat',
};
