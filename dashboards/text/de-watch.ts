/** What keeps a hazard from being watched, in German. Part of the catalogue (de.ts). */
export const watch = {
  unheardTitle: 'Noch nie gehört',
  unheardPeopleTitle: 'Noch nie gehört, wo Menschen verletzt werden können',
  unheardBecause: {
    'never-heard': 'hat sich noch nie gemeldet',
    'never-entered': 'wurde noch nie eingetragen',
    'too-late': 'hat nur Messwerte gesandt, die zum Beurteilen zu alt waren',
  },
  unheardPlace: '{$signal}: noch an keiner Stelle gehört.',
  unheardSays: '{$signal} {$because}.',
  unheardRules: 'Wird ohne diesen Wert nicht beurteilt: {$rules}.',
  unheardTopic:
    'Erwartet wird er auf {$topic}. Prüfen Sie, ob das Gerät läuft und dorthin sendet und ob die Werksdatei dieses Thema nennt.',
  unheardByHand: 'Tragen Sie ihn auf der Seite der Station ein.',
  unheardLate: 'Er kommt auf {$topic}. Stellen Sie die Uhr des Senders.',
  unheardMore: '.match $n one {{und {$n} weiterer}} * {{und {$n} weitere}}',
  nothingAbnormal: 'Nichts Auffälliges.',
  noAlarmPeople:
    '.match $n one {{Kein Alarm steht an. {$n} Gefahr für Menschen ist nicht überwacht.}} * {{Kein Alarm steht an. {$n} Gefahren für Menschen sind nicht überwacht.}}',
  noAlarmPartly:
    '.match $n one {{Kein Alarm steht an. {$n} Gefahr für Menschen ist nicht durch alle ihre Regeln überwacht.}} * {{Kein Alarm steht an. {$n} Gefahren für Menschen sind nicht durch alle ihre Regeln überwacht.}}',
  notByAll: 'Nicht durch alle Regeln:',
  hazardAside: '{$rule}: {$state}, {$since}. {$end}',
  hazardAsideWhy: 'Grund: {$reason}',
  noValueTitle: 'Zurzeit nicht berechnet',
  noValueSays: 'Diese Größen werden aus anderen Messwerten berechnet. Was sie braucht, wartet.',
  noSignalTells: 'Kein Signal hier zeigt es an: {$what}.',
  notArmedNeeds: 'Läuft noch nicht. Es fehlt: {$needs}.',
  notBuilt: 'Nicht berechnet, weil eine Zahl fehlt: {$needs}.',
  worseStands: 'Ein schlimmerer Alarm steht an:',
  sinceAhead:
    'Seit {$clock} nach einer Uhr, die seither zurückgestellt wurde: Diese Zeit steht noch bevor.',
  pastAgain: 'Seit {$since}. Er ging {$clock} zurück und ist wieder jenseits von {$limit}.',
  notJudgedSince:
    'Seit {$clock} nicht beurteilt: Die Anlage verließ den Zustand, in dem er beurteilt wird. Ob er vorbei ist, weiß niemand.',
  transitionUnjudged: 'Nicht mehr beurteilt: Die Anlage verließ den Zustand dafür',
  nothingJudged:
    'Hier wird zurzeit nichts beurteilt: Keine Regel, die gemeldet wird, hat einen Grenzwert zu einem Messwert.',
  judgedNoLimit: 'Hier wird zurzeit beurteilt, ohne Abstand zu einem Grenzwert: {$rules}.',
  notReadNow:
    'Zurzeit kein verwendbarer Messwert: {$signals}. Wird ohne ihn nicht beurteilt: {$rules}.',
  nameTakenTitle: 'Nicht überwacht: Der Name ist vergeben',
  nameTakenPeopleTitle:
    'Nicht überwacht, wo Menschen verletzt werden können: Der Name ist vergeben',
  nameTaken:
    'Die Stelle, die auf {$topic} sendet, wird nicht überwacht: Ihren Namen hat schon {$owner}, der Sender von {$signal}.',
  nameTakenFix:
    'Geben Sie den beiden Sendern Namen, die sich nicht nur in Großschreibung und Zeichen unterscheiden. Wurde einer durch den anderen ersetzt, geben Sie ihm genau dessen Namen.',
  nothingReads:
    'Hier lässt sich zurzeit nichts beurteilen. Gefahren ohne verwendbaren Messwert: {$unjudged}; nicht überwacht: {$notWatched}.',
  pastNoAlarm: 'Dazu steht kein Alarm an: Vielleicht läuft eine Verzögerung.',

  // alarm performance
  countedFrom: 'Gezählt von {$from} bis {$until}: {$span}.',
  byShiftNone: 'ab {$clock}: nichts gezählt',
} as const;
