/** Sätze vom Weitergeben, vom Zurückstellen und vom erneuten Melden. Teil des Katalogs (de.ts). */
export const aside = {
  putAside: 'Zurückgestellt und außer Betrieb',
  putAsideNone: 'Nichts ist zurückgestellt: Kein Alarm wird hier vom Melden abgehalten.',
  putAsideSays:
    'Von diesen wird niemandem gemeldet. Sie werden weiter beurteilt und aufgezeichnet; die Gefahr bleibt.',
  asideState: {
    shelved: 'Zurückgestellt',
    'suppressed-by-design': 'Planmäßig unterdrückt',
    'out-of-service': 'Außer Betrieb',
  },
  asideSince: 'seit {$clock}, {$by}',
  asidePlant: 'durch den Zustand der Anlage',
  asideUnknown: 'seit wann, ist nicht bekannt',
  asideUntil: 'Endet von selbst {$clock}.',
  asideOnce: 'Endet von selbst {$clock}, oder vorher, sobald der Alarm vorbei ist.',
  asideOpen: 'Bleibt so, bis jemand den Alarm zurückbringt.',
  asidePlantEnds: 'Endet, wenn die Anlage in einem anderen Zustand ist.',
  asideLine: 'Zurückgestellt von {$by} bis {$clock}: {$what}.',
  asideLineHere: 'Zurückgestellt an diesem Gerät bis {$clock}: {$what}.',
  asideLineOut: 'Außer Betrieb, durch {$by}, bis {$clock}: {$what}.',
  asideLineOpen: 'Außer Betrieb, durch {$by}, bis zum Zurückbringen: {$what}.',
  asideLineOutHere: 'Außer Betrieb, an diesem Gerät, bis {$clock}: {$what}.',
  asideLineOpenHere: 'Außer Betrieb, an diesem Gerät, bis zum Zurückbringen: {$what}.',
  asideLinePlant: 'Zurzeit niemandem gemeldet, wegen des Zustands der Anlage: {$what}.',
  asideStands: 'Die Bedingung besteht gerade.',
  asideBlind: 'Der Sensor liefert keinen verwendbaren Messwert.',

  closedBy: 'Geschlossen {$clock} von {$by}: {$reason}',
  closedHere: 'Geschlossen {$clock} an diesem Gerät: {$reason}',
  closedByPlain: 'Geschlossen {$clock} von {$by}.',
  closedHerePlain: 'Geschlossen {$clock} an diesem Gerät.',
  closedItself: 'Geschlossen {$clock}: Er war vorbei.',
  closedRemoved: 'Geschlossen {$clock}: Die Regel wurde aus der Werksdatei genommen.',
  closedUnjudged:
    'Geschlossen {$clock}: Seither wird er nicht beurteilt. Das ist keine Entwarnung.',
  closedSteps: 'Was zu tun war, solange er anstand',

  passOn: 'Ich kann nicht: nächste Person',
  passOnWhat: 'Er bleibt unbeantwortet. Die Antwort hier sagt, wer jetzt gefragt wird.',
  passedOnTo: 'Weitergegeben. Jetzt gefragt: {$who}.',
  passedOnNobody: 'Niemand ist zu erreichen. Holen Sie selbst jemanden.',
  passedOnNotNow: 'Zurzeit wird es sonst niemandem gemeldet. Holen Sie selbst jemanden.',
  shelveOnce: 'Nur dieses eine Mal: es endet, sobald der Alarm vorbei ist',
  outOfServiceDo: 'Außer Betrieb nehmen',
  outOfServiceWhat:
    'Für Arbeit am Sensor oder an der Stelle: nach der Arbeit zurückbringen. Die Gefahr bleibt und gilt als nicht überwacht.',
  outOfServiceFor: 'Für',
  outOfServiceOpen: 'bis ihn jemand zurückbringt',
  outOfServiceManaged:
    'Ein besonders geführter Alarm braucht ein Ende und einen Grund von mindestens zehn Buchstaben; solange er ansteht, nehmen ihn nur EHS oder eine Administratorin außer Betrieb. Wo sich niemand anmeldet, kann es jeder an dieser Maschine: Schreiben Sie Ihren Namen zum Grund.',
  backInService: 'Wieder in Betrieb nehmen',
  outOfServiceAnother: 'Einen anderen Alarm außer Betrieb nehmen',
  outOfServiceWhich: 'Welcher Alarm',
  outOfServiceMay: 'Die Instandhaltung nimmt Alarme außer Betrieb und bringt sie zurück.',

  nuisance: {
    chattering: 'Er flattert: dreimal in einer Minute. Kein Telefon läutet dafür.',
    fleeting:
      'Er kommt und geht binnen einer Minute. Kein Telefon läutet dafür, wenn er nicht bleibt.',
  },
  toldAgain: 'Jemand wurde erneut gerufen: nichts wurde besser in der Zeit zum Handeln',
  toldLate: 'Doch gemeldet: er blieb',
  untoldAgain:
    'Nichts wurde besser in der Zeit zum Handeln. Er sollte erneut gemeldet werden und erreichte niemanden',
  untoldLate: 'Er blieb und sollte doch gemeldet werden. Er erreichte niemanden',
  toldNobodyOfAll:
    'Von keinem dieser Alarme weiß schon jemand. Wo Hilfe nötig ist: Holen Sie jemanden.',
  toldNobody: 'Davon weiß noch niemand. Wo Hilfe nötig ist: Holen Sie jemanden.',
  byWhom: '{$what} {$clock}, {$by}',
  byItself: '{$what} {$clock}',
  whoWasTold: 'Wem es gemeldet wurde',
  toldEach: '{$who}, per {$by}: {$what}.',
  toldWay: { push: 'Telefon', email: 'E-Mail', webhook: 'Webhook' },
  toldOutcome: {
    delivered: 'gemeldet',
    gone: 'nicht erreicht, Telefon oder Postfach gibt es nicht mehr',
    refused: 'dort nicht angenommen',
    'given-up': 'nicht erreicht, aufgegeben',
    withdrawn: 'nicht mehr nötig',
    full: 'nicht gesendet, zu viele Meldungen warteten',
  },
} as const;
