/** German for the texts of `en-rules.ts`. */
export const rules = {
  // the rule sheet
  ruleSheet: 'Regelblatt',
  ruleSheetSays:
    'Jede Regel dieses Werks: worauf sie achtet, ihre Grenzwerte mit Herkunft und was zu tun ist. Ein Grenzwert wird in der Werksdatei geändert, nie hier.',
  ruleSheetCsv: 'Das ganze Blatt als Tabelle (CSV)',
  ruleCount: '.match $n one {{{$n} Regel}} * {{{$n} Regeln}}',
  readiness: {
    armed: 'läuft',
    'armed-limit-unconfirmed': 'läuft, ein Grenzwert noch zu bestätigen',
    'not-armed': 'läuft noch nicht',
  },
  priorityWord: { high: 'hoch', medium: 'mittel', low: 'niedrig' },
  ruleFacts: '{$word}, Priorität: {$priority}, {$readiness}',
  ruleHolds: 'Sperrt: {$hold}.',
  ruleGate: 'Nur solange: {$gates}.',
  rulePeople: 'Menschen können verletzt werden.',
  ruleManaged:
    'Besonders geführt, mit besonderer Sorgfalt behandelt: niemand kann ihn zurückstellen.',
  ruleLatching: 'Bleibt stehen, bis jemand ihn zurücksetzt.',

  // alarm performance
  performance: 'Güte der Alarme',
  performanceSays:
    'Ob mehr Alarme kommen, als Menschen beantworten können, in den letzten 30 Tagen. Die Richtwerte sind die von ISA-18.2 und IEC 62682. Nie nach Person: Zahlen zur Person verleiten dazu, ungelesen zu quittieren.',
  performanceShort: 'Hinter diesen Zahlen liegen weniger als die 30 Tage, die die Norm verlangt.',
  loadTold: 'Gemeldete Alarme',
  loadPerDay: 'Alarme je Tag',
  loadPerHour: 'Alarme je Stunde',
  loadMost: 'Höchstens in 10 min',
  loadFloods: 'Alarmfluten',
  loadInFlood: 'Zeit in Alarmflut',
  loadTopTen: 'Anteil der zehn häufigsten',
  loadChattering: 'Regeln, die flatterten',
  loadFleeting: 'Binnen einer Minute vorbei, unbeantwortet',
  loadStanding: 'Länger als einen Tag anstehend',
  loadPriority: { high: 'Priorität hoch', medium: 'Priorität mittel', low: 'Priorität niedrig' },
  atMost: 'Richtwert: höchstens {$n}',
  about: 'Richtwert: etwa {$n}',
  noneWanted: 'Richtwert: keine',
  mostFrequent: 'Am häufigsten',
  mostFrequentEach: '.match $n one {{{$rule}: einmal}} * {{{$rule}: {$n}-mal}}',
  standingNow: 'Länger als einen Tag anstehend',
  standingEach: '{$rule}, seit {$clock}',
  wasNeeded: 'War er nötig?',
  wasNeededEach: '{$rule}: ja {$yes}, nein {$no}',
  byShift: 'Nach Schicht',
  byShiftEach:
    '.match $n one {{ab {$clock}: {$n} Alarm, {$rate} je Stunde}} * {{ab {$clock}: {$n} Alarme, {$rate} je Stunde}}',
  answeredIn: 'Zeit bis zur Antwort',
  answeredEach:
    '{$priority}: die Hälfte binnen {$median}, neun von zehn binnen {$slowest}; {$unanswered} unbeantwortet',
  answeredNone: '{$priority}: {$unanswered} unbeantwortet, keiner beantwortet',
} as const;
