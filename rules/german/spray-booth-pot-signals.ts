/** German for the texts of `rules/stations/spray-booth-pot-signals.ts`. */
import type { Texts } from './texts.ts';

export const sprayBoothPotSignals: Texts = {
  'gauge pressure in the pressure pot': 'Überdruck im Druckbehälter',
  'on a free port of the pot’s lid, in the air above the material. Fitted only with the pot vented and released for work; never in the relief valve’s line. First ask how this area is classified, whether solvent or electrostatic guns are used on this line, and who may drill here: a sensor or radio that is not certified for it can light vapour':
    'an einem freien Anschluss im Deckel des Druckbehälters, in der Luft über dem Material. Einbau nur bei drucklosem und zur Arbeit freigegebenem Druckbehälter; nie in der Leitung des Sicherheitsventils. Zuerst fragen, wie dieser Bereich nach Explosionsschutz eingestuft ist, ob an dieser Linie Lösemittel oder elektrostatische Spritzpistolen verwendet werden und wer hier bohren darf: Ein Sensor oder Funkgerät ohne Zulassung für diesen Bereich kann Dampf entzünden',
  '1 while the pot’s air is on and it feeds the guns, else 0':
    '1, solange die Luft des Druckbehälters an ist und er die Spritzpistolen speist, sonst 0',
  'pressure switch behind the pot’s air valve, or a switch people set. First ask how this area is classified, whether solvent or electrostatic guns are used on this line, and who may drill here: a sensor or radio that is not certified for it can light vapour':
    'Druckschalter hinter dem Luftventil des Druckbehälters oder ein von Hand gestellter Schalter. Zuerst fragen, wie dieser Bereich nach Explosionsschutz eingestuft ist, ob an dieser Linie Lösemittel oder elektrostatische Spritzpistolen verwendet werden und wer hier bohren darf: Ein Sensor oder Funkgerät ohne Zulassung für diesen Bereich kann Dampf entzünden',
  '1 while there is material in the pot, else 0':
    '1, solange Material im Druckbehälter ist, sonst 0',
  'level switch, or a switch people set at filling and at cleaning. First ask how this area is classified, whether solvent or electrostatic guns are used on this line, and who may drill here: a sensor or radio that is not certified for it can light vapour':
    'Füllstandschalter oder ein Schalter, der beim Füllen und beim Reinigen von Hand gestellt wird. Zuerst fragen, wie dieser Bereich nach Explosionsschutz eingestuft ist, ob an dieser Linie Lösemittel oder elektrostatische Spritzpistolen verwendet werden und wer hier bohren darf: Ein Sensor oder Funkgerät ohne Zulassung für diesen Bereich kann Dampf entzünden',
  'level of the material above the pot’s floor':
    'Füllstand des Materials über dem Boden des Druckbehälters',
  'from the lid, or by weight under the pot; wetted parts stainless or plastic. Fitted only with the pot vented and released for work; never in the relief valve’s line. First ask how this area is classified, whether solvent or electrostatic guns are used on this line, and who may drill here: a sensor or radio that is not certified for it can light vapour':
    'vom Deckel aus oder über das Gewicht unter dem Druckbehälter; medienberührte Teile aus Edelstahl oder Kunststoff. Einbau nur bei drucklosem und zur Arbeit freigegebenem Druckbehälter; nie in der Leitung des Sicherheitsventils. Zuerst fragen, wie dieser Bereich nach Explosionsschutz eingestuft ist, ob an dieser Linie Lösemittel oder elektrostatische Spritzpistolen verwendet werden und wer hier bohren darf: Ein Sensor oder Funkgerät ohne Zulassung für diesen Bereich kann Dampf entzünden',
  'speed of the shaft of the pot’s own paddle':
    'Drehzahl der Welle des eigenen Rührpaddels im Druckbehälter',
  'pick-up on the shaft above the lid, two targets or more, not at the motor; in the mix room likewise. First ask how this area is classified, whether solvent or electrostatic guns are used on this line, and who may drill here: a sensor or radio that is not certified for it can light vapour':
    'Aufnehmer an der Welle über dem Deckel, zwei oder mehr Schaltmarken, nicht am Motor; im Mischraum ebenso. Zuerst fragen, wie dieser Bereich nach Explosionsschutz eingestuft ist, ob an dieser Linie Lösemittel oder elektrostatische Spritzpistolen verwendet werden und wer hier bohren darf: Ein Sensor oder Funkgerät ohne Zulassung für diesen Bereich kann Dampf entzünden',
  'speed of the paddle’s tip; turns of a drum agitator say nothing for it':
    'Geschwindigkeit der Spitze des Rührpaddels; die Drehzahl eines Fassrührwerks sagt darüber nichts',
};
