/** Sentences of what keeps a hazard from being watched. Part of the catalogue (en.ts). */
export const watch = {
  unheardTitle: 'Never heard',
  unheardPeopleTitle: 'Never heard, where people can be hurt',
  unheardBecause: {
    'never-heard': 'has never been heard',
    'never-entered': 'has never been entered',
    'too-late': 'has only sent readings too old to be judged',
  },
  unheardPlace: '{$signal}: no place heard yet.',
  unheardSays: '{$signal} {$because}.',
  unheardRules: 'Not judged without it: {$rules}.',
  unheardTopic:
    'It should come on {$topic}. See that its device runs and sends there, and that the site file names that topic.',
  unheardByHand: 'Enter it on the page of its station.',
  unheardLate: 'It comes on {$topic}. Set the clock of its sender.',
  unheardMore: '.match $n one {{and {$n} more}} * {{and {$n} more}}',
  nothingAbnormal: 'Nothing abnormal.',
  noAlarmPeople:
    '.match $n one {{No alarm stands. {$n} hazard to people is not watched.}} * {{No alarm stands. {$n} hazards to people are not watched.}}',
  noAlarmPartly:
    '.match $n one {{No alarm stands. {$n} hazard to people is not watched by all its rules.}} * {{No alarm stands. {$n} hazards to people are not watched by all their rules.}}',
  notByAll: 'Not by all its rules:',
  hazardAside: '{$rule}: {$state}, {$since}. {$end}',
  hazardAsideWhy: 'Reason: {$reason}',
  noValueTitle: 'Not worked out now',
  noValueSays: 'These are worked out from other readings. What needs them waits.',
  noSignalTells: 'No signal here tells it: {$what}.',
  notArmedNeeds: 'Not judged yet. It needs: {$needs}.',
  notBuilt: 'Not worked out for want of a number: {$needs}.',
  worseStands: 'A worse alarm stands:',
  sinceAhead: 'Since {$clock} by a clock that was set back since: that time is still to come.',
  pastAgain: 'Since {$since}. It went back {$clock}, and is past {$limit} again.',
  notJudgedSince:
    'Not judged since {$clock}: the plant left the state it is judged in. Whether it is over, nobody can tell.',
  transitionUnjudged: 'Not judged any more: the plant left the state it is judged in',
  nothingJudged: 'Nothing is judged here now: no rule that is told has a limit on a reading.',
  judgedNoLimit: 'Judged here now, with no distance to a limit: {$rules}.',
  notReadNow: 'No usable reading now: {$signals}. Not judged without it: {$rules}.',
  nameTakenTitle: 'Not watched: the name is taken',
  nameTakenPeopleTitle: 'Not watched where people can be hurt: the name is taken',
  nameTaken:
    'The place that sends on {$topic} is not watched: its name is that of {$owner}, which feeds {$signal}.',
  nameTakenFix:
    'Give the two senders names that differ in more than capitals and signs. Where one replaced the other, give it the very name of the other.',
  nothingReads:
    'Nothing can be judged here now. Hazards without a usable reading: {$unjudged}; not watched: {$notWatched}.',
  pastNoAlarm: 'No alarm of it stands: a delay may be running.',

  // alarm performance
  countedFrom: 'Counted from {$from} to {$until}: {$span}.',
  byShiftNone: 'from {$clock}: nothing counted',
} as const;
