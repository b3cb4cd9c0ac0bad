/** The catalogue's sentences about rules and about alarm performance; see `en.ts`. */
export const rules = {
  // the rule sheet
  ruleSheet: 'Rule sheet',
  ruleSheetSays:
    'Every rule of this site: what it watches for, its limits with where they come from, and what to do. A limit is changed in the site file, never here.',
  ruleSheetCsv: 'The whole sheet as a table (CSV)',
  ruleCount: '.match $n one {{{$n} rule}} * {{{$n} rules}}',
  readiness: {
    armed: 'runs',
    'armed-limit-unconfirmed': 'runs, a limit still to be confirmed',
    'not-armed': 'does not run yet',
  },
  priorityWord: { high: 'high', medium: 'medium', low: 'low' },
  ruleFacts: '{$word}, priority {$priority}, {$readiness}',
  ruleHolds: 'Puts on hold: {$hold}.',
  ruleGate: 'Only while {$gates}.',
  rulePeople: 'People can be hurt.',
  ruleManaged: 'Highly managed, which is handled with special care: nobody can shelve it.',
  ruleLatching: 'Stays until somebody resets it.',

  // alarm performance
  performance: 'Alarm performance',
  performanceSays:
    'Whether there are more alarms than people can answer, over the last 30 days. Guidance is that of ISA-18.2 and IEC 62682. Never by person: a figure of a person makes people acknowledge unread.',
  performanceShort: 'Less than the 30 days the standard wants lies behind these figures.',
  loadTold: 'Alarms told',
  loadPerDay: 'Alarms a day',
  loadPerHour: 'Alarms an hour',
  loadMost: 'Most in 10 min',
  loadFloods: 'Floods',
  loadInFlood: 'Time in flood',
  loadTopTen: 'Share of the ten most frequent',
  loadChattering: 'Rules that chattered',
  loadFleeting: 'Gone within a minute, unanswered',
  loadStanding: 'Standing longer than a day',
  loadPriority: { high: 'Priority high', medium: 'Priority medium', low: 'Priority low' },
  atMost: 'guidance: at most {$n}',
  about: 'guidance: about {$n}',
  noneWanted: 'guidance: none',
  mostFrequent: 'Most frequent',
  mostFrequentEach: '.match $n one {{{$rule}: once}} * {{{$rule}: {$n} times}}',
  standingNow: 'Standing longer than a day',
  standingEach: '{$rule}, since {$clock}',
  wasNeeded: 'Was it needed?',
  wasNeededEach: '{$rule}: yes {$yes}, no {$no}',
  byShift: 'By shift',
  byShiftEach:
    '.match $n one {{from {$clock}: {$n} alarm, {$rate} an hour}} * {{from {$clock}: {$n} alarms, {$rate} an hour}}',
  answeredIn: 'Time to answer',
  answeredEach:
    '{$priority}: half within {$median}, nine of ten within {$slowest}; {$unanswered} unanswered',
  answeredNone: '{$priority}: {$unanswered} unanswered, none answered',
} as const;
